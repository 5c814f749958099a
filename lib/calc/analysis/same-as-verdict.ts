import { mustBeWithin } from '../checks'
import { turnedToGood } from './gain-verdict'

/**
 * Verdict for a question of the kind *same as*, by two one-sided tests: **same** when the interval lies wholly within
 * ± the margin; **different** when it lies wholly at or beyond it on one side; otherwise **undecided**.
 * For level α of each test give the two-sided interval at confidence 1 − 2α (90 % for 5 %).
 * @param estimate arm minus control; @param low, high its interval; @param margin largest difference that does not matter, > 0
 * @throws CalcError 'not-finite' | 'out-of-range' | 'wrong-shape'
 * Source: Schuirmann (1987), J. Pharmacokinet. Biopharm. 15.
 * @example sameAsVerdict({ estimate: 1, low: -2, high: 4, margin: 5 }) // 'same'
 */
export function sameAsVerdict(q: {
  estimate: number
  low: number
  high: number
  margin: number
}): 'same' | 'different' | 'undecided' {
  const margin = mustBeWithin('margin', q.margin, { over: 0 })
  const { low, high } = turnedToGood({ ...q, goodDirection: 'larger' })
  if (low > -margin && high < margin) return 'same'
  return low >= margin || high <= -margin ? 'different' : 'undecided'
}
