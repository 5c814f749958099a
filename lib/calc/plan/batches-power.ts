import { mustBeWhole, mustBeWithin } from '../checks'
import { type TestAsked, tTestPower } from './t-test-power'

export type BatchedArms = TestAsked & { loavesPerBatch: number; batchSd: number; loafSd: number }

/**
 * Chance that a t test of batch means sees a true difference between two arms. The batch is what counts: more loaves
 * make its mean surer, and add no degrees of freedom.
 * @param batchesPerArm 2 to 10,000; @param loavesPerBatch 1 to 10,000; @param difference true difference of the means
 * @param batchSd, loafSd spread between batches and between loaves of one, ≥ 0, not both 0
 * @param alpha, alternative see TestAsked
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: noncentral t with df = 2 (b − 1) and variance of an arm mean (σ_b² + σ_l² / l) / b; Searle (1971), Linear Models.
 * @example batchesPower({ batchesPerArm: 5, loavesPerBatch: 3, batchSd: 40, loafSd: 30, difference: 100, alpha: 0.05, alternative: 'two-sided' }).power // 0.88658
 */
export function batchesPower(q: BatchedArms & { batchesPerArm: number }): {
  power: number
  df: number
  noncentrality: number
} {
  mustBeWhole('batchesPerArm', q.batchesPerArm, { min: 2, max: 10_000 })
  return batchesPowerAt(q)
}

/** The same for any number above 1, for a search. */
export function batchesPowerAt(q: BatchedArms & { batchesPerArm: number }): {
  power: number
  df: number
  noncentrality: number
} {
  const loaves = mustBeWhole('loavesPerBatch', q.loavesPerBatch, { min: 1, max: 10_000 })
  const loafVariance = mustBeWithin('loafSd', q.loafSd, { min: 0 }) ** 2
  const variance = mustBeWithin('batchSd', q.batchSd, { min: 0 }) ** 2 + loafVariance / loaves
  mustBeWithin('batchSd', variance, { over: 0 })
  return tTestPower({ ...q, differenceSe: Math.sqrt((2 * variance) / q.batchesPerArm), df: 2 * (q.batchesPerArm - 1) })
}
