import { say } from '../../words/say'
import { stationCauses as words } from '../../words/en/station-causes'
import { station } from '../../words/en/station'
import type { FloorDough } from '../keep/facts'
import type { OutboxEntry } from '../outbox/entry'
import { shownTime } from '../ui/figures'

type WentWrongProps = {
  dough: Pick<FloorDough, 'id'>
  entries: readonly OutboxEntry[]
  locale: string
  timeZone: string
}

/** What went wrong with a dough, as it was noted on this tablet, with what can be done about it. */
export function WentWrong({ dough, entries, locale, timeZone }: WentWrongProps) {
  const noted = entries.filter((entry) => entry.kind === 'cause').filter(({ payload }) => payload.batchId === dough.id)
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
      {has(words.what.lost) && <p>{words.lost}</p>}
      {has(words.what.scale) && <p>{words.scaleNext}</p>}
    </>
  )
}
