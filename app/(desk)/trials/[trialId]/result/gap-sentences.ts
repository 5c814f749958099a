import 'server-only'
import { sayGap } from '@/app/(desk)/say-gap'
import { say } from '@/lib/words/say'
import { wordsIn } from '@/lib/words/words'
import type { ResultForms } from './result-forms'
import type { ShownBakery, ShownResult } from './shown-result'

/** What is missing, unsettled or odd about the measured doughs, a sentence each. */
export function gapSentences({ gaps }: Pick<ShownResult, 'gaps'>, bakery: ShownBakery, { text, language }: ResultForms): string[] {
  const { shift } = wordsIn(language)
  // Two readings of one place may be odd in the very same way, which is said once.
  return [...new Set(gaps.flatMap(({ code, gaps: ofDough }) => ofDough.map((gap) => say(text.gap, language, { code, what: sayGap(gap, bakery, shift, language) }))))]
}
