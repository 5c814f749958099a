import { say } from '../../words/say'
import { station as words } from '../../words/en/station'
import { openDough, type Kept } from '../keep/tablet'
import type { OutboxEntry } from '../outbox/entry'
import { toRead } from '../outbox/stand-of-place'
import { shownTime } from '../ui/figures'
import { Tap } from '../ui/tap'
import { NextDoughs } from './next-doughs'

type DoughListProps = {
  floor: Kept['floor'] | null
  entries: readonly OutboxEntry[]
  personId: string
  locale: string
  timeZone: string
}

/** What is to be begun, and the doughs that are under way, by their codes, with how much is still to be read. */
export function DoughList({ floor, entries, personId, ...clock }: DoughListProps) {
  if (!floor)
    return (
      <div className="narrow">
        <h1>{words.doughs.title}</h1>
        <p>{words.doughs.notFetched}</p>
      </div>
    )
  const { doughs, next } = floor.value
  return (
    <div className="narrow">
      <h1>{words.doughs.title}</h1>
      <NextDoughs next={next} personId={personId} />
      {next.length > 0 && <h2>{words.doughs.underWay}</h2>}
      {doughs.length === 0 && <p>{words.doughs.none}</p>}
      <ul className="rows">
        {doughs.map((dough) => {
          const count = toRead(dough, entries)
          return (
            <li key={dough.id}>
              <Tap look="row" onTap={() => void openDough(dough.id)}>
                <b className="figure">{dough.code}</b>
                <span>
                  {say(words.doughs.trial, 'en', { number: dough.trialNumber, formula: dough.formulaName })}
                  <br />
                  {words.doughs.states[dough.state]}
                </span>
                <span className="end">
                  {count === 0 ? words.doughs.allRead : say(words.doughs.toRead, 'en', { count })}
                </span>
              </Tap>
            </li>
          )
        })}
      </ul>
      <p className="note">{say(words.doughs.asOf, 'en', { time: shownTime(floor.at, clock) })}</p>
    </div>
  )
}
