import 'server-only'
import { sayGapOf } from '@/app/(desk)/say-gap'
import { wordsIn } from '@/lib/words/words'
import type { ResultForms } from './result-forms'
import type { ShownBakery, ShownResult } from './shown-result'

/** What is missing, unsettled or odd about the measured doughs, a sentence each. */
export function gapSentences(
  { gaps }: Pick<ShownResult, 'gaps'>,
  bakery: ShownBakery,
  { language }: ResultForms,
): string[] {
  // Two readings of one place may be odd in the very same way, which is said once.
  return [
    ...new Set(
      gaps.flatMap(({ code, gaps: ofDough }) =>
        ofDough.map((gap) => sayGapOf(code, gap, bakery, wordsIn(language), language)),
      ),
    ),
  ]
}
