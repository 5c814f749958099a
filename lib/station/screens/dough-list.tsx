import { say } from '../../words/say'
import { station as words } from '../../words/en/station'
import { remember, type Kept } from '../keep/tablet'
import type { OutboxEntry } from '../outbox/entry'
import { toRead } from '../outbox/stand-of-place'
import { shownTime } from '../ui/figures'
import { Tap } from '../ui/tap'
import { HandOver } from './hand-over'

type DoughListProps = {
  floor: Kept['floor'] | null
  entries: readonly OutboxEntry[]
  locale: string
  timeZone: string
}

/** The doughs that are under way, by their codes, with how much is still to be read. */
export function DoughList({ floor, entries, ...clock }: DoughListProps) {
  if (!floor)
    return (
      <div className="narrow">
        <h1>{words.doughs.title}</h1>
        <p>{words.doughs.notFetched}</p>
      </div>
    )
  const { doughs, notes } = floor.value
  return (
    <div className="narrow">
      <h1>{words.doughs.title}</h1>
      {doughs.length === 0 && <p>{words.doughs.none}</p>}
      <ul className="rows">
        {doughs.map((dough) => {
          const count = toRead(dough, entries)
          return (
            <li key={dough.id}>
              <Tap
                look="row"
                onTap={() => void remember('at', { batchId: dough.id, measureId: null, piece: null, repeat: null })}
              >
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
      <HandOver notes={notes} {...clock} />
      <p className="note">{say(words.doughs.asOf, 'en', { time: shownTime(floor.at, clock) })}</p>
    </div>
  )
}
