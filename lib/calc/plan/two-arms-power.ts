import { mustBeWhole, mustBeWithin } from '../checks'
import { type TestAsked, tTestPower } from './t-test-power'

export type TwoArms = TestAsked & { sd: number }

/**
 * Chance that a t test of two arms, with one common spread, sees a true difference.
 * @param countPerArm doughs of each arm, each counted once, 2 to 10,000
 * @param difference true difference of the means; @param sd spread between doughs, > 0; both in the measure's unit,
 *   or both in % of the mean (a percentage difference and a CV)
 * @param alpha, alternative see TestAsked
 * @returns power 0 to 1, degrees of freedom, noncentrality
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: noncentral t with df = 2 (n − 1), δ = d √(n / 2) / σ; both tails as in R's power.t.test(strict = TRUE).
 * @example twoArmsPower({ countPerArm: 20, difference: 1, sd: 1, alpha: 0.05, alternative: 'two-sided' }).power // 0.86895
 */
export function twoArmsPower(q: TwoArms & { countPerArm: number }): {
  power: number
  df: number
  noncentrality: number
} {
  mustBeWhole('countPerArm', q.countPerArm, { min: 2, max: 10_000 })
  return twoArmsPowerAt(q)
}

/** The same for any number above 1, for a search. */
export function twoArmsPowerAt(q: TwoArms & { countPerArm: number }): {
  power: number
  df: number
  noncentrality: number
} {
  const sd = mustBeWithin('sd', q.sd, { over: 0 })
  return tTestPower({ ...q, differenceSe: sd * Math.sqrt(2 / q.countPerArm), df: 2 * (q.countPerArm - 1) })
}
