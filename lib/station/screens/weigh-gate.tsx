import { useState } from 'react'
import { say } from '../../words/say'
import { stationHeld } from '../../words/en/station-held'
import { stationMixing as words } from '../../words/en/station-mixing'
import type { FloorDough } from '../keep/facts'
import { atDough, openDough } from '../keep/tablet'
import type { KeptList } from '../keep/weigh-facts'
import type { OutboxEntry } from '../outbox/entry'
import { nextToWeigh } from '../outbox/next-to-weigh'
import { linesWithEntries } from '../outbox/stand-of-line'
import { canChangeWater } from '../outbox/water-in-dough'
import { openWeights } from '../talk/open-weights'
import { Tap } from '../ui/tap'
import { useGoOn } from '../ui/use-go-on'

type WeighGateProps = {
  dough: FloorDough
  /** Its weights, where they lie here and whoever is on the tablet has opened them. */
  kept: KeptList | null
  personId: string
  entries: readonly OutboxEntry[]
  /** It is what is done with the dough now. */
  isMain: boolean
}

/** The way to the scales: who opens the weights of a dough knows which it is, so that is said before, and noted. */
export function WeighGate({ dough, kept, personId, entries, isMain }: WeighGateProps) {
  const [isAsking, setAsking] = useState(false)
  const [error, setError] = useState<string | null>(null)
  const goOn = useGoOn()
  if (dough.state === 'baked') return null
  const open = async () => {
    setAsking(true)
    setError(null)
    const refused = await openWeights(dough.id, personId)
    setAsking(false)
    if (refused) setError(refused.words ?? words.weights.offline)
    else await goOn(atDough(dough.id, { weigh: null }))
  }
  const lines = kept && linesWithEntries(kept.list, entries)
  const water = lines?.find(canChangeWater)
  const left = lines?.filter(({ stands }) => stands === null).length ?? 0
  return (
    <section>
      <h2>{words.weights.title}</h2>
      {lines ? (
        <>
          <Tap
            look={isMain && left > 0 ? 'main' : 'plain'}
            onTap={() => void openDough(dough.id, { weigh: nextToWeigh(lines, null)?.key ?? null })}
          >
            {left > 0 ? say(words.weights.go, 'en', { count: left }) : words.weights.done}
          </Tap>
          {water && (
            <Tap look="plain" onTap={() => void openDough(dough.id, { weigh: water.key })}>
              {stationHeld.go}
            </Tap>
          )}
        </>
      ) : (
        <>
          <p>{words.weights.note}</p>
          <p role="alert" className="fault">
            {error}
          </p>
          <Tap look={isMain ? 'main' : 'plain'} disabled={isAsking} onTap={() => void open()}>
            {isAsking ? words.begin.asking : words.weights.open}
          </Tap>
        </>
      )}
    </section>
  )
}
