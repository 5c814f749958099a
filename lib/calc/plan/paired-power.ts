import { mustBeWhole, mustBeWithin } from '../checks'
import { type TestAsked, tTestPower } from './t-test-power'

export type PairedArms = TestAsked & { sdOfDifferences: number }

/**
 * Chance that a paired t test sees a true difference: two arms baked side by side, once on each mixing day.
 * @param pairs mixing days, 2 to 10,000; @param difference true mean difference
 * @param sdOfDifferences spread of the daily differences, > 0 (√2 times that of a dough when the days cancel)
 * @param alpha, alternative see TestAsked
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: noncentral t with df = n − 1, δ = d √n / σ_d.
 * @example pairedPower({ pairs: 10, difference: 40, sdOfDifferences: 40, alpha: 0.05, alternative: 'two-sided' }).power // 0.8031
 */
export function pairedPower(q: PairedArms & { pairs: number }): { power: number; df: number; noncentrality: number } {
  mustBeWhole('pairs', q.pairs, { min: 2, max: 10_000 })
  return pairedPowerAt(q)
}

/** The same for any number above 1, for a search. */
export function pairedPowerAt(q: PairedArms & { pairs: number }): { power: number; df: number; noncentrality: number } {
  const sd = mustBeWithin('sdOfDifferences', q.sdOfDifferences, { over: 0 })
  return tTestPower({ ...q, differenceSe: sd / Math.sqrt(q.pairs), df: q.pairs - 1 })
}
