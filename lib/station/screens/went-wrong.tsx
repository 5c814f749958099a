import { say } from '../../words/say'
import { stationCauses as words } from '../../words/en/station-causes'
import { station } from '../../words/en/station'
import type { FloorDough } from '../keep/facts'
import { causesOfDough } from '../outbox/causes-of-dough'
import type { OutboxEntry } from '../outbox/entry'
import { TakeOut } from './take-out'
import { shownTime } from '../ui/figures'

type WentWrongProps = {
  dough: Pick<FloorDough, 'id'>
  entries: readonly OutboxEntry[]
  personId: string
  locale: string
  timeZone: string
}

/** What went wrong with a dough, as it was noted on this tablet, with what can be done about it. */
export function WentWrong({ dough, entries, personId, locale, timeZone }: WentWrongProps) {
  const noted = causesOfDough(dough.id, entries)
  const last = noted.filter(({ state }) => state !== 'attention').at(-1)
  const has = (what: string) => noted.some(({ payload }) => payload.what === what)
  return (
    <>
      {noted.map(({ id, payload, personName, state }) => (
        <p key={id} className="attention">
          {say(words.noted, 'en', {
            what: payload.what,
            who: personName,
            at: shownTime(payload.takenAt, { locale, timeZone }),
          })}
          <br />
          <small>{station.states[state]}</small>
        </p>
      ))}
      {has(words.what.scale) && <p>{words.scaleNext}</p>}
      {last && (
        <TakeOut
          key={`${dough.id} ${personId}`}
          batchId={dough.id}
          why={last.payload.what}
          isLost={last.payload.what === words.what.lost}
          isInBook={last.state !== 'waiting'}
          personId={personId}
        />
      )}
    </>
  )
}
