import { ToneMark } from '@/lib/ui/tone-mark'
import { fill } from '@/lib/words/say'
import { warningFacts } from '@/lib/words/warning-facts'
import type { PlanPart, WarningShown } from './plan-seen'

type WarningListProps = Omit<PlanPart, 'plan'> & { warnings: readonly WarningShown[] }

/** What to mind, one to a line, each with its mark. Nothing when there is nothing. */
export function WarningList({ warnings, words, format, language }: WarningListProps) {
  if (warnings.length === 0) return null
  return (
    <ul className="my-2 max-w-measure">
      {warnings.map((warning, i) => (
        <li key={i} className="flex items-baseline gap-2 py-0.5 text-warn">
          <ToneMark tone="warn" />
          <span>
            {fill(words.trials.warnings[warning.code], language, warningFacts(warning.facts, format, words, language))}
          </span>
        </li>
      ))}
    </ul>
  )
}
