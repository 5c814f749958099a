import 'server-only'
import { sayPlace } from '@/app/(desk)/say-place'
import { sayRepair } from '@/app/(desk)/say-repair'
import { formatDateTime } from '@/lib/words/format/date'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import type { ResultForms } from './result-forms'
import type { ShownBakery, ShownResult } from './shown-result'

/** What was done to the readings beside the plan, a sentence each: notes of what happened, repairs, further repeats, odd times, corrections. */
export function conductSentences(
  { conduct, isEnded, batches }: Pick<ShownResult, 'conduct' | 'isEnded' | 'batches'>,
  bakery: ShownBakery,
  { text, language }: ResultForms,
): string[] {
  const { causes, repairs, furtherRepeats, oddTimes, corrections } = conduct
  const corrected = corrections.length
  const isUnfinished = (state: string) => state === 'weighing' || state === 'in_work' || state === 'baked'
  return [
    ...causes.map(({ code, what, at, who }) =>
      say(text.cause, language, { code, what, at: formatDateTime(at, bakery), who }),
    ),
    ...repairs.map((repair) => sayRepair(repair, bakery, text.repairs, language)),
    ...(isEnded ? batches : [])
      .filter(({ state }) => isUnfinished(state))
      .map(({ code }) => say(text.unfinished, language, { code })),
    ...furtherRepeats.map(({ code, have, of, ...place }) =>
      say(text.furtherRepeats, language, { code, have, of, ...sayPlace(place, wordsIn(language), language) }),
    ),
    ...oddTimes.map(({ code, kind, count }) => say(text.oddTimes[kind], language, { code, count })),
    ...(corrected > 0
      ? [say(isEnded ? text.correctedCount : text.correctedSoFar, language, { count: corrected })]
      : []),
  ]
}
