import { Section } from '@/lib/ui/section'
import { say } from '@/lib/words/say'
import { conductSentences } from './conduct-sentences'
import { gapSentences } from './gap-sentences'
import type { ResultForms } from './result-forms'
import type { ShownBakery, ShownComparison, ShownResult } from './shown-result'

/**
 * Doughs that were lost, what is missing, unsettled or odd, what was done to the readings beside the plan, order that was
 * not kept, values that stand out. That nothing was reported stands only where all of these are empty.
 */
export function WentWrong({
  result,
  comparison,
  bakery,
  forms,
}: {
  result: ShownResult
  comparison: ShownComparison | null
  bakery: ShownBakery
  forms: ResultForms
}) {
  const { text, language } = forms
  const sentences = [
    ...result.batches.flatMap(({ code, state, stateWhy }) =>
      stateWhy === null ? [] : say(text.ended[state], language, { code, why: stateWhy }),
    ),
    ...gapSentences(result, bakery, forms),
    ...conductSentences(result, bakery, forms),
    ...result.outOfOrderDays.map((day) => say(text.outOfOrder, language, { day })),
    ...flagSentences(comparison?.flags ?? [], forms),
  ]
  return (
    <Section id="wrong" title={text.wentWrong}>
      {sentences.length === 0 ? (
        <p className="max-w-measure">{text.wentWrongNone}</p>
      ) : (
        <ul className="max-w-measure list-disc pl-5">
          {sentences.map((sentence, at) => (
            <li key={`${at} ${sentence}`}>{sentence}</li>
          ))}
        </ul>
      )}
    </Section>
  )
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
