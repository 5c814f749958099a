import 'server-only'
import { gainVerdict } from '../../calc/analysis/gain-verdict'
import { noWorseVerdict } from '../../calc/analysis/no-worse-verdict'
import { sameAsVerdict } from '../../calc/analysis/same-as-verdict'
import type { VerdictCode } from './codes'
import type { DeclaredTrial } from './trial-facts'

export type Verdict = { verdict: VerdictCode; clearly: boolean }

/**
 * The verdict that the declared question asks for. *Which dose* judges each dose as a gain; *look only*, and a measure
 * without a direction (but for *same as*), get none.
 * @param low, high limits as the question asks for: two-sided simultaneous for a gain, one-sided ones for the others
 * @param worthwhile the declared margin in units, > 0
 */
export function verdictOf(q: {
  declared: Pick<DeclaredTrial, 'kind' | 'measure'>
  estimate: number
  low: number
  high: number
  worthwhile: number
}): Verdict | null {
  const { estimate, low, high, worthwhile } = q
  const direction = q.declared.measure.direction === 'none' ? null : q.declared.measure.direction
  const { kind } = q.declared
  switch (kind) {
    case 'gain':
    case 'which_dose':
      return gainVerdict({ estimate, low, high, worthwhile, goodDirection: direction })
    case 'no_worse':
      return (
        direction && {
          verdict: noWorseVerdict({ estimate, low, high, margin: worthwhile, goodDirection: direction }),
          clearly: false,
        }
      )
    case 'same_as':
      return { verdict: sameAsVerdict({ estimate, low, high, margin: worthwhile }), clearly: false }
    case 'look_only':
      return null
    default:
      return kind satisfies never
  }
}
