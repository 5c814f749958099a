import { Section } from '@/lib/ui/section'
import type { ResultForms } from './result-forms'
import type { ShownBakery, ShownComparison, ShownResult } from './shown-result'
import { wentWrongSentences } from './went-wrong-sentences'

/** Everything in which the trial was not as planned; that nothing was reported stands only where there is none of it. */
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
  const { text } = forms
  const sentences = wentWrongSentences(result, comparison?.flags ?? [], bakery, forms)
  // What was read around a failed check stands right below, and is something too.
  if (sentences.length === 0 && result.marks.length > 0) return null
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
