import { mustBeWithin } from '../checks'
import { CalcError } from '../error'

export type GoodDirection = 'larger' | 'smaller'

export type GainVerdict = {
  verdict: 'better' | 'worse' | 'no-worthwhile-difference' | 'undecided'
  /** The whole interval is at or beyond the worthwhile difference. */
  clearly: boolean
}

/**
 * Verdict for a question of the kind *gain*, on the declared primary measure. In this order:
 * **better** when the interval lies wholly on the good side of zero and the estimate is at or above the worthwhile
 * difference (clearly, when the whole interval is); **worse** when it lies wholly on the bad side;
 * **no worthwhile difference** when it lies wholly between the loss that matters and the worthwhile difference; otherwise **undecided**.
 * A limit exactly at zero is on neither side; one exactly at ± the worthwhile difference is not within.
 * @param estimate arm minus control; @param low, high its simultaneous interval, low ≤ estimate ≤ high
 * @param worthwhile smallest difference worth having, > 0, in the same unit (or on the same log scale)
 * @param loss smallest loss that matters, > 0, where it is not as large: on logs m % up and m % down are not
 * @param goodDirection null for a measure without a direction
 * @returns null without a direction: no verdict
 * @throws CalcError 'not-finite' | 'out-of-range'; 'wrong-shape' when the estimate is outside its interval
 * Source: the project's declared rule; use of an interval against a margin as in ICH E9 (1998), section 3.3.
 * @example gainVerdict({ estimate: 9, low: 2, high: 16, worthwhile: 5, goodDirection: 'larger' }) // better, not clearly
 */
export function gainVerdict(q: {
  estimate: number
  low: number
  high: number
  worthwhile: number
  loss?: number
  goodDirection: GoodDirection | null
}): GainVerdict | null {
  const worthwhile = mustBeWithin('worthwhile', q.worthwhile, { over: 0 })
  const loss = q.loss === undefined ? worthwhile : mustBeWithin('loss', q.loss, { over: 0 })
  if (q.goodDirection === null) return null
  const { estimate, low, high } = turnedToGood({ ...q, goodDirection: q.goodDirection })
  if (low > 0 && estimate >= worthwhile) return { verdict: 'better', clearly: low >= worthwhile }
  if (high < 0) return { verdict: 'worse', clearly: high <= -loss }
  if (low > -loss && high < worthwhile) return { verdict: 'no-worthwhile-difference', clearly: false }
  return { verdict: 'undecided', clearly: false }
}

/** The same interval with larger as better. @throws CalcError 'not-finite' | 'wrong-shape' */
export function turnedToGood(q: { estimate: number; low: number; high: number; goodDirection: GoodDirection }): {
  estimate: number
  low: number
  high: number
} {
  const { estimate, low, high } = q
  mustBeWithin('estimate', estimate)
  mustBeWithin('low', low)
  mustBeWithin('high', high)
  if (low > estimate || estimate > high)
    throw new CalcError('wrong-shape', { field: 'estimate', value: estimate, min: low, max: high })
  return q.goodDirection === 'larger' ? { estimate, low, high } : { estimate: -estimate, low: -high, high: -low }
}
