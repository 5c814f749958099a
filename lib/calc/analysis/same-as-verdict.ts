import { mustBeWithin } from '../checks'
import { turnedToGood } from './gain-verdict'

/**
 * Verdict for a question of the kind *same as*, by two one-sided tests: **same** when the interval lies wholly within
 * ± the margin; **different** when it lies wholly at or beyond it on one side; otherwise **undecided**.
 * For level α of each test give the two-sided interval at confidence 1 − 2α (90 % for 5 %).
 * @param estimate arm minus control; @param low, high its interval; @param margin largest difference that does not matter, > 0
 * @param less the same for less than the control, > 0, where it is not as large: on logs m % up and m % down are not
 * @throws CalcError 'not-finite' | 'out-of-range' | 'wrong-shape'
 * Source: Schuirmann (1987), J. Pharmacokinet. Biopharm. 15.
 * @example sameAsVerdict({ estimate: 1, low: -2, high: 4, margin: 5 }) // 'same'
 */
export function sameAsVerdict(q: {
  estimate: number
  low: number
  high: number
  margin: number
  less?: number
}): 'same' | 'different' | 'undecided' {
  const margin = mustBeWithin('margin', q.margin, { over: 0 })
  const less = q.less === undefined ? margin : mustBeWithin('less', q.less, { over: 0 })
  const { low, high } = turnedToGood({ ...q, goodDirection: 'larger' })
  if (low > -less && high < margin) return 'same'
  return low >= margin || high <= -less ? 'different' : 'undecided'
}
