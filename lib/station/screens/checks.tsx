import { say } from '../../words/say'
import { stationChecks as words } from '../../words/en/station-checks'
import type { FloorInstrument } from '../keep/facts'
import type { KeptBy } from '../keep/keep-entry'
import { forget, remember, type Kept } from '../keep/tablet'
import { checksOfDay } from '../outbox/checks-of-day'
import type { OutboxEntry } from '../outbox/entry'
import { shownTime } from '../ui/figures'
import { Tap } from '../ui/tap'
import { useNow } from '../ui/use-now'
import { Check } from './check'

type ChecksProps = {
  floor: Kept['floor']
  of: Kept['checking']
  entries: readonly OutboxEntry[]
  by: KeptBy
  locale: string
  timeZone: string
}

/** The scales, thermometers and volume gauges with how they stand today; one that is tapped is checked. */
export function Checks({ floor, of, entries, by, ...clock }: ChecksProps) {
  const checks = checksOfDay(floor, entries, useNow())
  const one = checks.find(({ id }) => id === of.instrumentId)
  if (one) return <Check instrument={one} {...{ by, of }} unit={unitOf(one, floor)} locale={clock.locale} />
  return (
    <div className="narrow">
      <div className="heads">
        <h1>{words.title}</h1>
        <Tap look="quiet" onTap={() => void forget('checking')}>
          {words.back}
        </Tap>
      </div>
      <p>{words.holdsNobody}</p>
      <ul className="rows">
        {checks.map(({ id, name, stand, at }) => (
          <li key={id}>
            <Tap look="row" onTap={() => void remember('checking', { instrumentId: id })}>
              <b>{name}</b>
              <span className={stand === 'failed' ? 'end attention' : 'end'}>
                {at === null || stand === 'toDo'
                  ? words.states.toDo
                  : say(words.states[stand], 'en', { at: shownTime(at, clock) })}
              </span>
              {stand === 'failed' && <span className="kept">{words.putRight}</span>}
            </Tap>
          </li>
        ))}
      </ul>
    </div>
  )
}

function unitOf({ kind }: FloorInstrument, floor: Kept['floor']): string {
  if (kind === 'volume_gauge') return 'mL'
  return kind === 'scale' ? 'g' : floor.value.temperatureUnit
}
