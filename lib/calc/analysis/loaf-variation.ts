import { mustBeWithin } from '../checks'
import { chiSquaredQuantile } from '../distributions/chi-squared-quantile'
import type { BatchMean } from './batch-means'

export type LoafVariation = { sd: number; df: number; low: number; high: number }

/**
 * How much loaves of one batch differ: the standard deviation pooled over batches, with its interval.
 * @param batches as batchMeans gives them; @param confidence 0.5 to 0.9999
 * @returns in the measure's unit; null without repeated loaves
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Searle (1971), Linear Models, chapter 10; limits by the chi-squared distribution of a variance.
 */
export function loafVariation(batches: readonly BatchMean[], confidence: number): LoafVariation | null {
  mustBeWithin('confidence', confidence, { min: 0.5, max: 0.9999 })
  const df = batches.reduce((sum, batch) => sum + batch.loafCount - 1, 0)
  if (df === 0) return null
  const sumSquares = batches.reduce((sum, batch) => sum + batch.loafSumSquares, 0)
  const p = (1 - confidence) / 2
  const limit = (tail: 'lower' | 'upper') => Math.sqrt(sumSquares / chiSquaredQuantile({ p, df, tail }))
  return { sd: Math.sqrt(sumSquares / df), df, low: limit('upper'), high: limit('lower') }
}
