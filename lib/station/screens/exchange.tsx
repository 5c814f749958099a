import { useState } from 'react'
import { say } from '../../words/say'
import { stationMixing } from '../../words/en/station-mixing'
import { stationRepairs } from '../../words/en/station-repairs'
import type { NextDough } from '../keep/facts'
import { forget, tablet } from '../keep/tablet'
import { exchange } from '../talk/repair-dough'
import { Tap } from '../ui/tap'
import { useGoOn } from '../ui/use-go-on'
import { ReadyOrOwn } from './ready-or-own'
import { useRepair } from './use-repair'

const words = stationRepairs.exchange

/** Two doughs that wait on one mixing day exchange their places: two taps say which, a third why. */
export function ExchangeScreen({ next, personId }: { next: NextDough; personId: string }) {
  const { ask, isAsking, fault, isOnline } = useRepair(words)
  const [chosen, setChosen] = useState<string[]>([next.id])
  const goOn = useGoOn()
  const draft = `${personId} exchange ${next.id}`
  const waiting = [next, ...next.after]
  const [one, other] = waiting.filter(({ id }) => chosen.includes(id))
  const choose = (id: string) =>
    setChosen((before) => (before.includes(id) ? before.filter((each) => each !== id) : [...before.slice(-1), id]))
  const go = async (why: string) => {
    if (!one || !other) return
    if (!(await ask(() => exchange(one, other, why, personId)))) return
    await tablet.drafts.delete(draft)
    await goOn(null)
  }
  return (
    <div className="narrow">
      <div className="heads">
        <h1>{words.title}</h1>
        <Tap look="quiet" onTap={() => void forget('at')}>
          {words.back}
        </Tap>
      </div>
      <p>{words.note}</p>
      <ul className="rows">
        {waiting.map(({ id, code, turn }) => (
          <li key={id}>
            <Tap look="row" pressed={chosen.includes(id)} onTap={() => choose(id)}>
              <b>{say(words.row, 'en', { code, place: turn })}</b>
            </Tap>
          </li>
        ))}
      </ul>
      <h2>{words.why}</h2>
      <p>{other ? words.whyNote : words.two}</p>
      {!isOnline && <p className="attention">{words.offline}</p>}
      <p role="alert" className="fault">
        {fault}
      </p>
      <ReadyOrOwn
        ready={Object.values(words.reasons)}
        other={words.other}
        keep={words.keep}
        draft={draft}
        isHeld={!other}
        asking={isAsking ? stationMixing.begin.asking : null}
        onSay={(why) => void go(why)}
      />
    </div>
  )
}
