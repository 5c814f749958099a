import { ArmMark } from '@/lib/ui/arm-mark'
import type { ResultForms } from './result-forms'
import { armSentences } from './say-result'
import type { ShownComparison, ShownCosts } from './shown-result'

/** What was found of each test dough, a line each, with the verdict where the sentence does not say it. */
export function ArmSentenceList({
  comparison,
  costs,
  forms,
}: {
  comparison: ShownComparison
  costs: ShownCosts | null
  forms: ResultForms
}) {
  return (
    <ul className="max-w-measure">
      {armSentences(comparison, costs, forms).map(({ arm, sentence, verdict }) => (
        <li key={arm.arm} className="mb-1.5 flex items-baseline gap-2">
          <ArmMark
            arm={forms.letter(arm.arm)}
            hollow={arm.doubts.length > 0 || arm.standing !== 'compared'}
            letterHidden
          />
          <span>
            {sentence}
            {verdict === null ? null : <b> {verdict}</b>}
          </span>
        </li>
      ))}
    </ul>
  )
}
