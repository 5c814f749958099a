import type { ShownTimer } from '../outbox/shown-timers'
import { stationSteps } from '../../words/en/station-steps'
import { plainNumber } from '../../words/format/plain-number'
import { withUnit } from '../../words/format/with-unit'
import { say } from '../../words/say'
import { shownTime } from './figures'

const words = stationSteps.timers
const minuteMs = 60_000

/** A length of time in minutes, as a tablet says it. */
export function minutes(ms: number, locale: string): string {
  return withUnit(plainNumber(ms / minuteMs, { locale }), 'min')
}

/** How far a timer is, and until when it runs or since when it is over. */
export function sayTimer(
  timer: Pick<ShownTimer, 'phase' | 'fromMs' | 'endsMs' | 'plannedS'>,
  now: number,
  clock: { locale: string; timeZone: string },
) {
  const { phase, fromMs, endsMs, plannedS } = timer
  const done = Math.floor(Math.max(0, now - fromMs) / minuteMs)
  const over = Math.floor((now - endsMs) / minuteMs)
  return {
    runs: say(words.runs, 'en', {
      phase: words.phases[phase],
      done: plainNumber(done, clock),
      planned: minutes(plannedS * 1000, clock.locale),
    }),
    until:
      now < endsMs
        ? say(words.until, 'en', { at: shownTime(endsMs, clock) })
        : over < 1
          ? words.justOver
          : say(words.over, 'en', { count: over }),
  }
}
