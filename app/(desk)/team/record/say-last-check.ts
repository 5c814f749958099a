import type { listJobs } from '@/lib/kitchen/jobs/list-jobs'
import type { AnswerOf } from '@/lib/kitchen/query'
import { formatDateTime } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import type { Language, Words } from '@/lib/words/words'

/** How the install found the record when it last looked at the whole of it. */
export function sayLastCheck(
  check: AnswerOf<typeof listJobs>['lastCheck'],
  text: Words['audit'],
  bakery: { locale: string; timeZone: string },
  language: Language,
): string {
  if (check === null) return text.lastCheckNever
  const date = formatDateTime(check.at, bakery)
  if (check.fault === null) return say(text.lastCheckWhole, language, { date })
  return say(check.fault.isUnknownFormat ? text.lastCheckUnknown : text.lastCheckBroken, language, {
    date,
    number: check.fault.number,
  })
}
