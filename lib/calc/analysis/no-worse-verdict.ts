import { mustBeWithin } from '../checks'
import { type GoodDirection, turnedToGood } from './gain-verdict'

/**
 * Verdict for a question of the kind *no worse than*: **no-worse** when the whole interval is better than a loss of
 * the margin; **worse** when the whole interval is a loss of the margin or more; otherwise **undecided**.
 * For a one-sided level α give the limits of the two-sided interval at confidence 1 − 2α.
 * @param estimate arm minus control; @param low, high its interval; @param margin largest loss that is bearable, > 0
 * @throws CalcError 'not-finite' | 'out-of-range' | 'wrong-shape'
 * Source: ICH E9 (1998), section 3.3.2; CPMP/EWP/482/99 (2000).
 * @example noWorseVerdict({ estimate: -1, low: -3, high: 1, margin: 5, goodDirection: 'larger' }) // 'no-worse'
 */
export function noWorseVerdict(q: {
  estimate: number
  low: number
  high: number
  margin: number
  goodDirection: GoodDirection
}): 'no-worse' | 'worse' | 'undecided' {
  const margin = mustBeWithin('margin', q.margin, { over: 0 })
  const { low, high } = turnedToGood(q)
  if (low > -margin) return 'no-worse'
  return high <= -margin ? 'worse' : 'undecided'
}
