import { useState } from 'react'
import { say } from '../../words/say'
import { stationHeld } from '../../words/en/station-held'
import { stationMixing as words } from '../../words/en/station-mixing'
import type { KeptBy } from '../keep/keep-entry'
import { openDough } from '../keep/tablet'
import type { KeptList, LotOffered } from '../keep/weigh-facts'
import { lineOnScale } from '../outbox/line-on-scale'
import { canChangeWater, waterChanges } from '../outbox/water-in-dough'
import type { StoodLine } from '../outbox/stand-of-line'
import { massWriter } from '../ui/masses'
import { saidOfLine } from '../ui/said-of-line'
import { useLots } from '../ui/use-lots'
import { shownTime } from '../ui/figures'
import { Tap } from '../ui/tap'
import { station } from '../../words/en/station'
import { LineTold } from './line-told'
import { LotsTold } from './lots-told'
import { ScaleChoice } from './scale-choice'
import { LotChoice } from './lot-choice'
import { useKeepingLine } from './use-keeping-line'
import { WeighPad } from './weigh-pad'

type WeighLineProps = {
  kept: KeptList
  line: StoodLine
  lines: readonly StoodLine[]
  /** The lot that is offered first. */
  last: LotOffered | null
  /** Lots of whose labels there are photos on the tablet. */
  labels: readonly string[]
  by: KeptBy
  correctsAny: boolean
  locale: string
  timeZone: string
}

/** One line of a dough, weighed now; or what stands of it, to be looked at and put right. */
export function WeighLine({ kept, line, lines, last, labels, by, correctsAny, locale, timeZone }: WeighLineProps) {
  const { keep, error, draft } = useKeepingLine(kept.list, line, by)
  const { chosen, choose } = useLots(draft)
  const [choosing, setChoosing] = useState<'scale' | 'lot' | null>(null)
  const write = massWriter({ unit: kept.list.unit, locale })
  const on = lineOnScale(line, kept.list, line.stands ? [] : kept.swaps)
  const told = <LineTold kept={kept} line={line} lines={lines} on={on} write={write} />
  const at = lines.indexOf(line)
  const step = (to: StoodLine | undefined, name: string) => (
    <Tap
      look="plain"
      disabled={to === undefined}
      onTap={() => void openDough(kept.batchId, { weigh: to?.key ?? null })}
    >
      {name}
    </Tap>
  )
  const steps = (
    <div className="acts">
      {step(lines[at - 1], words.line.before)}
      {step(lines[at + 1], words.line.after)}
    </div>
  )
  const onDone = () => setChoosing(null)
  if (choosing === 'scale') return <ScaleChoice kept={kept} line={line} write={write} onDone={onDone} />
  if (choosing === 'lot' && !line.stands) return <LotChoice {...{ line, lines, chosen, choose, last, onDone }} />
  if (line.stands)
    return (
      <div className="narrow">
        {told}
        <p className="what">
          {say(words.line.stands, 'en', {
            value: saidOfLine(line.stands, write, line.target.stepG),
            who: line.stands.who,
            at: shownTime(line.stands.at, { locale, timeZone }),
          })}
        </p>
        <LotsTold lots={line.stands.lots} gave={(massG) => write(massG, line.target.stepG)} />
        <p>
          <b>{station.states[line.stands.state]}</b>
        </p>
        {line.lost.length > 0 && <p className="attention">{words.list.lost}</p>}
        {correctsAny || line.stands.personId === by.personId ? (
          <div className="acts">
            <Tap look="plain" onTap={() => void openDough(kept.batchId, { weigh: line.key, isFix: true })}>
              {words.line.fix}
            </Tap>
            {canChangeWater(line) &&
              waterChanges.map((water) => (
                <Tap
                  key={water}
                  look="plain"
                  disabled={water === 'heldBack' && line.stands?.how === 'left_out'}
                  onTap={() => void openDough(kept.batchId, { weigh: line.key, water })}
                >
                  {stationHeld.ways[water]}
                </Tap>
              ))}
          </div>
        ) : (
          <p className="note">{words.line.notYours}</p>
        )}
        {steps}
      </div>
    )
  return (
    <WeighPad
      line={line}
      dough={kept.list}
      on={on}
      write={write}
      locale={locale}
      draft={draft}
      error={error}
      lots={{ chosen, choose, last, labels, onPick: () => setChoosing('lot') }}
      onSaid={(said, confirmed) => void keep({ said, confirmed, wrong: null, draft }, chosen)}
      more={
        <>
          {line.howTo.length > 0 && <HowTo steps={line.howTo} />}
          <div className="acts">
            <Tap look="plain" onTap={() => setChoosing('scale')}>
              {words.line.other}
            </Tap>
          </div>
          {steps}
        </>
      }
    >
      {told}
    </WeighPad>
  )
}

/** How a premix is made, for whoever has not got it ready. */
function HowTo({ steps }: { steps: readonly string[] }) {
  return (
    <>
      <h2>{words.line.howTo}</h2>
      <ol className="steps">
        {steps.map((each) => (
          <li key={each}>{each}</li>
        ))}
      </ol>
    </>
  )
}
