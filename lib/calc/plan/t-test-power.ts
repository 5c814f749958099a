import type { Alternative } from '../analysis/adjust-against-control'
import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { noncentralTTail } from '../distributions/noncentral-t-tail'
import { tQuantile } from '../distributions/t-quantile'

/** A t test before it is made: whole enough to tell its power from its degrees of freedom and noncentrality. */
export type TestAsked = {
  /** True difference, in the unit of the spread; `less` looks for one below 0. */
  difference: number
  /** Chance of a false alarm, 1e-6 to 0.5; shared by both sides when two-sided. */
  alpha: number
  alternative: Alternative
}

/**
 * Chance that a t test sees the true difference; both tails are counted when two-sided, though the far one is an error.
 * @param differenceSe true standard error of the difference, > 0; @param df 0.5 to 1e6
 * @returns 0 to 1, about 1e-12 relative
 * @throws CalcError 'not-finite' | 'out-of-range'; with reason 'far-beyond-spread' for more than 1000 standard errors
 * Source: noncentral t; Johnson, Kotz & Balakrishnan (1995), chapter 31.
 */
export function tTestPower(q: TestAsked & { differenceSe: number; df: number }): {
  power: number
  df: number
  noncentrality: number
} {
  const alpha = mustBeWithin('alpha', q.alpha, { min: 1e-6, max: 0.5 })
  const noncentrality = mustBeWithin('difference', q.difference) / q.differenceSe
  if (Math.abs(noncentrality) > 1000)
    throw new CalcError('out-of-range', { field: 'difference', value: q.difference, reason: 'far-beyond-spread' })
  const critical = tQuantile({ p: q.alternative === 'two-sided' ? alpha / 2 : alpha, df: q.df, tail: 'upper' })
  const above = () => noncentralTTail({ t: critical, df: q.df, noncentrality, tail: 'upper' })
  const below = () => noncentralTTail({ t: -critical, df: q.df, noncentrality, tail: 'lower' })
  const power = (q.alternative === 'less' ? 0 : above()) + (q.alternative === 'greater' ? 0 : below())
  return { power: Math.min(1, power), df: q.df, noncentrality }
}

/**
 * Demands a difference that some number of doughs would show: not 0, and on the side that is looked at.
 * @throws CalcError 'not-finite' | 'out-of-range', the latter with reason 'other-direction' where that is the fault
 */
export function mustBeSeeable(field: string, difference: number, alternative: Alternative): void {
  mustBeWithin(field, Math.abs(difference), { over: 0 })
  if ((alternative === 'greater' && difference < 0) || (alternative === 'less' && difference > 0)) {
    throw new CalcError('out-of-range', { field, value: difference, reason: 'other-direction' })
  }
}
