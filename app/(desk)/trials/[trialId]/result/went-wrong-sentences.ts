import 'server-only'
import { say } from '@/lib/words/say'
import { conductSentences } from './conduct-sentences'
import { gapSentences } from './gap-sentences'
import type { ResultForms } from './result-forms'
import type { ShownBakery, ShownComparison, ShownResult } from './shown-result'

type Listed = Pick<ShownResult, 'batches' | 'gaps' | 'conduct' | 'weighings' | 'isEnded' | 'outOfOrderDays'>

/**
 * A sentence for each thing in which a trial was not as planned: doughs that were taken out, what is missing, unsettled
 * or odd, what was done to the readings, order that was not kept, values that stand out. A verdict is plain only where
 * there is none.
 */
export function wentWrongSentences(
  result: Listed,
  flags: ShownComparison['flags'],
  bakery: ShownBakery,
  forms: ResultForms,
): string[] {
  const { text, language } = forms
  return [
    ...result.batches.flatMap(({ code, state, stateWhy }) =>
      stateWhy === null ? [] : say(text.ended[state], language, { code, why: stateWhy }),
    ),
    ...gapSentences(result, bakery, forms),
    ...conductSentences(result, bakery, forms),
    ...result.outOfOrderDays.map((day) => say(text.outOfOrder, language, { day })),
    ...flagSentences(flags, forms),
  ]
}

/** Values that stand out; doughs that tie are named together. */
function flagSentences(flags: ShownComparison['flags'], { text, language, pEquals }: ResultForms): string[] {
  const doughs = flags.filter(({ level }) => level === 'batch')
  const loaves = flags.filter(({ level }) => level === 'loaf')
  const [first, ...tied] = doughs
  return [
    ...(first && tied.length === 0
      ? [say(text.flags.batch, language, { code: first.code, p: pEquals(first.p) })]
      : first
        ? [say(text.flags.oneOf, language, { codes: doughs.map(({ code }) => code), p: pEquals(first.p) })]
        : []),
    ...loaves.map(({ code, piece, p }) => say(text.flags.loaf, language, { code, piece: piece ?? '', p: pEquals(p) })),
  ]
}
