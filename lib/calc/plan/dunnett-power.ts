import type { Alternative } from '../analysis/adjust-against-control'
import { mustBeWhole, mustBeWithin, mustHaveAtLeast } from '../checks'
import { dunnettLoadings } from '../distributions/dunnett-loadings'
import { dunnettQuantile } from '../distributions/dunnett-quantile'
import { dunnettTail } from '../distributions/dunnett-tail'
import { noncentralTTail } from '../distributions/noncentral-t-tail'
import { CalcError } from '../error'

export type ArmsAgainstControl = { differences: readonly number[]; sd: number; alpha: number; alternative: Alternative }

export type DunnettPower = {
  df: number
  criticalValue: number
  /** Chance that each arm is seen to differ, in the order of the differences. */
  powerEach: number[]
  /** Chance that at least one is. */
  powerAny: number
}

/**
 * Chance that Dunnett's comparison of several arms with one control sees their true differences.
 * @param controlCount doughs of the control, 1 to 10,000; @param armCount of each arm, 1 to 10,000
 * @param differences true, arm minus control, 1 to 12; @param sd common spread between doughs, > 0
 * @param alpha joint chance of a false alarm, 1e-6 to 0.5; @param alternative `less` looks for arms below the control
 * @returns chances 0 to 1, about 1e-9 relative
 * @throws CalcError 'not-finite' | 'out-of-range' | 'empty'; 'not-possible' with reason 'no-residual-df';
 *   'out-of-range' with reason 'far-beyond-spread' for a difference above 100 standard errors
 * Source: Dunnett (1955), JASA 50; noncentral multivariate t, see dunnettTail.
 * @example dunnettPower({ controlCount: 6, armCount: 6, differences: [80, 40], sd: 50, alpha: 0.05, alternative: 'two-sided' }).powerAny // 0.6485
 */
export function dunnettPower(q: ArmsAgainstControl & { controlCount: number; armCount: number }): DunnettPower {
  mustBeWhole('controlCount', q.controlCount, { min: 1, max: 10_000 })
  mustBeWhole('armCount', q.armCount, { min: 1, max: 10_000 })
  const { df, criticalValue, powerEach, powerAny } = dunnettPowerAt(q)
  return { df, criticalValue, powerEach: powerEach(), powerAny: powerAny() }
}

/** The same for any numbers that leave degrees of freedom, worked out as far as it is asked for: for a search. */
export function dunnettPowerAt(q: ArmsAgainstControl & { controlCount: number; armCount: number }): {
  df: number
  criticalValue: number
  powerEach: () => number[]
  powerAny: () => number
} {
  const { controlCount, armCount } = q
  const alpha = mustBeWithin('alpha', q.alpha, { min: 1e-6, max: 0.5 })
  const arms = mustBeWithin('differences.length', mustHaveAtLeast('differences', q.differences, 1).length, { max: 12 })
  const se = mustBeWithin('sd', q.sd, { over: 0 }) * Math.sqrt(1 / controlCount + 1 / armCount)
  // turned so that the side looked at is the upper one
  const noncentralities = q.differences.map((difference, i) => {
    const shift = ((q.alternative === 'less' ? -1 : 1) * mustBeWithin(`differences[${i}]`, difference)) / se
    if (Math.abs(shift) > 100)
      throw new CalcError('out-of-range', {
        field: `differences[${i}]`,
        value: difference,
        reason: 'far-beyond-spread',
      })
    return shift
  })
  const df = controlCount + arms * armCount - arms - 1
  if (df < 1) throw new CalcError('not-possible', { field: 'armCount', value: df, reason: 'no-residual-df' })
  const sides = q.alternative === 'two-sided' ? 'two' : 'one'
  const loadings = dunnettLoadings({ controlCount, armCounts: q.differences.map(() => armCount) })
  const criticalValue = dunnettQuantile({ p: alpha, df, loadings, sides })
  const partOf = (noncentrality: number) => {
    const above = noncentralTTail({ t: criticalValue, df, noncentrality, tail: 'upper' })
    return sides === 'one'
      ? above
      : Math.min(1, above + noncentralTTail({ t: -criticalValue, df, noncentrality, tail: 'lower' }))
  }
  return {
    df,
    criticalValue,
    powerEach: () => noncentralities.map(partOf),
    powerAny: () => dunnettTail({ c: criticalValue, df, loadings, noncentralities, sides }).upper,
  }
}
