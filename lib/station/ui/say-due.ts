import { station as words } from '../../words/en/station'
import { momentNear } from '../../words/format/moment-near'
import { say } from '../../words/say'
import type { dueOfDough } from '../outbox/due-of-dough'

type Clock = { locale: string; timeZone: string }

/** When something falls due, as somebody says it who stands there now. */
export function sayDue({ measure, due }: ReturnType<typeof dueOfDough>[number], now: number, clock: Clock): string {
  const at = (ms: number) => momentNear(new Date(ms), new Date(now), clock)
  switch (due.when) {
    case 'later':
      return say(words.due.later, 'en', { measure, at: at(due.from) })
    case 'now':
      return due.until === null
        ? say(words.due.now, 'en', { measure })
        : say(words.due.nowUntil, 'en', { measure, at: at(due.until) })
    case 'late':
      return say(words.due.late, 'en', { measure, at: at(due.since) })
    default:
      return due satisfies never
  }
}
