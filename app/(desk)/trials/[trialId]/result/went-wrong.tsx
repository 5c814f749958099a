import { Section } from '@/lib/ui/section'
import { say } from '@/lib/words/say'
import type { ResultForms } from './result-forms'
import type { ShownComparison, ShownResult } from './shown-result'

/** Doughs that were lost, order that was not kept, values that stand out. */
export function WentWrong({ result, comparison, forms }: { result: ShownResult; comparison: ShownComparison | null; forms: ResultForms }) {
  const { text, language } = forms
  const sentences = [
    ...result.batches.flatMap(({ code, state, stateWhy }) =>
      stateWhy === null ? [] : say(text.ended, language, { code, state: text.batchStates[state], why: stateWhy }),
    ),
    ...result.outOfOrderDays.map((day) => say(text.outOfOrder, language, { day })),
    ...(comparison?.flags ?? []).map(({ level, code, piece, p }) =>
      level === 'batch'
        ? say(text.flags.batch, language, { code, p: forms.pEquals(p) })
        : say(text.flags.loaf, language, { code, piece: piece ?? '', p: forms.pEquals(p) }),
    ),
  ]
  return (
    <Section id="wrong" title={text.wentWrong}>
      {sentences.length === 0 ? (
        <p className="max-w-measure">{text.wentWrongNone}</p>
      ) : (
        <ul className="max-w-measure list-disc pl-5">
          {sentences.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      )}
    </Section>
  )
}
