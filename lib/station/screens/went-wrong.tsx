import { say } from '../../words/say'
import { stationCauses as words } from '../../words/en/station-causes'
import { station } from '../../words/en/station'
import type { FloorDough } from '../keep/facts'
import { remember } from '../keep/tablet'
import type { OutboxEntry } from '../outbox/entry'
import { shownTime } from '../ui/figures'
import { Tap } from '../ui/tap'

type WentWrongProps = {
  dough: Pick<FloorDough, 'id' | 'code'>
  entries: readonly OutboxEntry[]
  locale: string
  timeZone: string
}

/** What went wrong with a dough, as it was noted on this tablet, with what can be done about it; and the way to note more. */
export function WentWrong({ dough, entries, locale, timeZone }: WentWrongProps) {
  const noted = entries.filter((entry) => entry.kind === 'cause').filter(({ payload }) => payload.batchId === dough.id)
  const has = (what: string) => noted.some(({ payload }) => payload.what === what)
  return (
    <>
      <Tap look="quiet" onTap={() => void remember('wrong', { batchId: dough.id, code: dough.code })}>
        {words.go}
      </Tap>
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
