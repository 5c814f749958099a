import 'server-only'
import { sayPlace } from '@/app/(desk)/say-place'
import { sayRepair } from '@/app/(desk)/say-repair'
import { formatDateTime } from '@/lib/words/format/date'
import { say, sayName } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import type { ResultForms } from './result-forms'
import type { ShownBakery, ShownResult } from './shown-result'

/**
 * What was done beside the plan, a sentence each: notes of what happened and of what was found later, repairs, further
 * repeats, odd times and days, what came from a file, corrections, and what was weighed otherwise or is not written.
 */
export function conductSentences(
  { conduct, weighings, isEnded, batches }: Pick<ShownResult, 'conduct' | 'weighings' | 'isEnded' | 'batches'>,
  bakery: ShownBakery,
  { text, language }: ResultForms,
): string[] {
  const { causes, foundCauses, repairs, furtherRepeats, oddTimes, oddDays, fromFile, corrections } = conduct
  const corrected = corrections.length
  const isUnfinished = (state: string) => state === 'weighing' || state === 'in_work' || state === 'baked'
  return [
    ...causes.map(({ code, what, at, who }) =>
      say(text.cause, language, { code, what, at: formatDateTime(at, bakery), who }),
    ),
    ...foundCauses.map(({ code, what, object, at, who, signed }) => {
      const facts = {
        code,
        what,
        object: sayName(text.foundObjects[object], language),
        at: formatDateTime(at, bakery),
        who,
      }
      if (!signed) return say(text.found.unsigned, language, facts)
      return signed.isAlone
        ? say(text.found.alone, language, facts)
        : say(text.found.signed, language, { ...facts, signer: signed.who })
    }),
    ...repairs.map((repair) => sayRepair(repair, bakery, text.repairs, language)),
    ...(isEnded ? batches : [])
      .filter(({ state }) => isUnfinished(state))
      .map(({ code }) => say(text.unfinished, language, { code })),
    ...furtherRepeats.map(({ code, have, of, ...place }) =>
      say(text.furtherRepeats, language, { code, have, of, ...sayPlace(place, wordsIn(language), language) }),
    ),
    ...oddTimes.map(({ code, kind, count }) => say(text.oddTimes[kind], language, { code, count })),
    ...oddDays.map((odd) =>
      odd.kind === 'spread'
        ? say(text.oddDays.spread, language, { day: odd.day })
        : say(text.oddDays.together, language, { day: odd.day, other: odd.other }),
    ),
    ...(fromFile > 0 ? [say(text.fromFile, language, { count: fromFile })] : []),
    ...(corrected > 0
      ? [say(isEnded ? text.correctedCount : text.correctedSoFar, language, { count: corrected })]
      : []),
    ...weighingSentences(weighings, { text, language }),
  ]
}

function weighingSentences(
  weighings: ShownResult['weighings'],
  { text, language }: Pick<ResultForms, 'text' | 'language'>,
): string[] {
  if (!weighings) return []
  const { unwritten, partly, off, corrections } = weighings
  const counted = [
    [text.linesOff, off.length],
    [text.correctedWeighings, corrections.length],
    [text.unwritten, unwritten.length],
    [text.partlyWritten, partly.length],
  ] as const
  return counted.flatMap(([sentence, count]) => (count > 0 ? [say(sentence, language, { count })] : []))
}
