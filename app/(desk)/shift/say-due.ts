import type { Due } from '@/lib/kitchen/readings/due-by-age.input'
import type { DateForm } from '@/lib/words/format/date'
import { momentNear } from '@/lib/words/format/moment-near'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'

/** When a measure falls due on a dough: 'Loaf weight: due from 06:00'. */
export function sayDue(
  due: Due,
  measure: string,
  bakery: DateForm,
  text: Words['shift']['rack']['due'],
  language: Language,
): string {
  const at = (ms: number) => momentNear(new Date(ms), new Date(), bakery)
  switch (due.when) {
    case 'later':
      return say(text.later, language, { measure, at: at(due.from) })
    case 'now':
      return due.until === null
        ? say(text.now, language, { measure })
        : say(text.nowUntil, language, { measure, at: at(due.until) })
    case 'late':
      return say(text.late, language, { measure, at: at(due.since) })
    default:
      return due satisfies never
  }
}
