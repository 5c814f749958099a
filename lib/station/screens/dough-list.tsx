import { stepsToCome } from '../../kitchen/steps/course-of-dough.input'
import { say } from '../../words/say'
import { station as words } from '../../words/en/station'
import { stationScan } from '../../words/en/station-scan'
import { stationSteps } from '../../words/en/station-steps'
import type { FloorDough } from '../keep/facts'
import { openDough, type Kept } from '../keep/tablet'
import type { OutboxEntry } from '../outbox/entry'
import { dueOfDough } from '../outbox/due-of-dough'
import { stepsOfDough } from '../outbox/steps-of-dough'
import { toRead } from '../outbox/stand-of-place'
import { shownTime } from '../ui/figures'
import { sayDue } from '../ui/say-due'
import { Tap } from '../ui/tap'
import { useNow } from '../ui/use-now'
import { ChecksRow } from './checks-row'
import { HandOver } from './hand-over'
import { OutDoughs } from './out-doughs'
import { NextDoughs } from './next-doughs'

type DoughListProps = {
  floor: Kept['floor'] | null
  entries: readonly OutboxEntry[]
  personId: string
  locale: string
  timeZone: string
  onScan(): void
}

/** What is to be begun, and the doughs that are under way, by their codes: what is next for each, and what falls due. */
export function DoughList({ floor, entries, personId, onScan, ...clock }: DoughListProps) {
  const now = useNow()
  if (!floor)
    return (
      <div className="narrow">
        <h1>{words.doughs.title}</h1>
        <p>{words.doughs.notFetched}</p>
      </div>
    )
  const { doughs, next, out, notes, isCut } = floor.value
  return (
    <div className="narrow">
      <div className="heads">
        <h1>{words.doughs.title}</h1>
        <Tap look="plain" onTap={onScan}>
          {stationScan.go}
        </Tap>
      </div>
      <NextDoughs next={next} personId={personId} />
      {next.length > 0 && <h2>{words.doughs.underWay}</h2>}
      {doughs.length === 0 && <p>{words.doughs.none}</p>}
      <ul className="rows">
        {doughs.map((dough) => {
          const count = toRead(dough, entries)
          const isDone = dough.state === 'baked' && count === 0
          return (
            <li key={dough.id}>
              <Tap look="row" onTap={() => void openDough(dough.id)}>
                <b className="figure">{dough.code}</b>
                <span>
                  {say(words.doughs.trial, 'en', { number: dough.trialNumber, formula: dough.formulaName })}
                  <br />
                  {words.doughs.states[dough.state]}
                  <br />
                  {isDone ? words.doughs.end : (nextStep(dough, entries) ?? words.doughs.next[dough.state])}
                  {dueOfDough(dough, entries, now).map((each) => (
                    <b key={each.measure} className={`due ${each.due.when}`}>
                      {sayDue(each, now, clock)}
                    </b>
                  ))}
                </span>
                <span className="end">
                  {count === 0 ? words.doughs.allRead : say(words.doughs.toRead, 'en', { count })}
                </span>
              </Tap>
            </li>
          )
        })}
      </ul>
      <OutDoughs out={out} />
      {isCut && <p className="attention">{words.doughs.cut}</p>}
      <ChecksRow {...{ floor, entries, now }} />
      <HandOver notes={notes} {...clock} />
      <p className="note">{say(words.doughs.asOf, 'en', { time: shownTime(floor.at, clock) })}</p>
    </div>
  )
}

/** What is done next, where somebody enters the steps of a dough; of one that is baked the readings come first. */
function nextStep(dough: FloorDough, entries: readonly OutboxEntry[]): string | null {
  const steps = stepsOfDough(dough, entries, 0)
  const { next } = stepsToCome(steps)
  return dough.state === 'baked' || steps.length === 0 || next === null ? null : stationSteps.next[next]
}
