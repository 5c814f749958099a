import { mustBeWithin, mustHaveAtLeast } from '../checks'
import { CalcError } from '../error'
import { chiSquaredQuantile } from '../distributions/chi-squared-quantile'
import { type BatchMean, type LoafReading, batchMeans } from './batch-means'
import { type Component, varianceComponent } from './variance-component'

export type OwnVariation = {
  method: 'anova-moments'
  mean: number
  block: Component | null
  batch: Component
  loaf: Component & { low: number; high: number }
}

/**
 * A bakery's own variation from doughs of one formula: variance components of block, batch in block and loaf in batch,
 * by equating mean squares to their expectations; unequal numbers allowed.
 * @param readings one arm; two or more batches, at least one with two loaves; blocks on all or on none
 * @param confidence of the interval of the loaf SD, 0.5 to 0.9999
 * @returns block null with fewer than two blocks
 * @throws CalcError as batchMeans; 'not-possible' with reason 'one-batch-per-block' | 'one-loaf-per-batch' | 'several-arms'
 * Source: Searle (1971), Linear Models, chapters 10 and 11 (nested classification, ANOVA estimators).
 */
export function ownVariation(q: { readings: readonly LoafReading[]; confidence: number }): OwnVariation {
  mustBeWithin('confidence', q.confidence, { min: 0.5, max: 0.9999 })
  const batches = batchMeans(q.readings)
  if (new Set(batches.map((batch) => batch.arm)).size > 1)
    throw new CalcError('not-possible', { field: 'readings', reason: 'several-arms' })
  mustHaveAtLeast('batches', batches, 2)
  const blockNames = [...new Set(batches.map((batch) => batch.block))]
  const blocks = blockNames.map((name) => batches.filter((batch) => batch.block === name))
  const [a, b] = [blocks.length, batches.length]
  const n = sum(batches.map((batch) => batch.loafCount))
  const [dfBatch, dfLoaf] = [b - a, n - b]
  if (dfBatch < 1) throw new CalcError('not-possible', { field: 'readings', value: b, reason: 'one-batch-per-block' })
  if (dfLoaf < 1) throw new CalcError('not-possible', { field: 'readings', value: n, reason: 'one-loaf-per-batch' })

  const grand = weightedMean(batches)
  const blockMeans = blocks.map(weightedMean)
  const blockSizes = blocks.map((block) => sum(block.map((batch) => batch.loafCount)))
  const ssLoaf = sum(batches.map((batch) => batch.loafSumSquares))
  const ssBatch = sum(
    blocks.map((block, i) => sum(block.map((batch) => batch.loafCount * (batch.mean - blockMeans[i]!) ** 2))),
  )
  const msLoaf = ssLoaf / dfLoaf
  const msBatch = ssBatch / dfBatch

  const withinBlocks = sum(blocks.map((block, i) => sum(block.map((batch) => batch.loafCount ** 2)) / blockSizes[i]!))
  const batchVariance = (msBatch - msLoaf) / ((n - withinBlocks) / dfBatch)
  let block: Component | null = null
  if (a > 1) {
    const msBlock = sum(blockMeans.map((mean, i) => blockSizes[i]! * (mean - grand) ** 2)) / (a - 1)
    const batchWeight = (withinBlocks - sum(batches.map((batch) => batch.loafCount ** 2)) / n) / (a - 1)
    const blockWeight = (n - sum(blockSizes.map((size) => size ** 2)) / n) / (a - 1)
    block = varianceComponent((msBlock - msLoaf - batchWeight * batchVariance) / blockWeight, a - 1)
  }
  const p = (1 - q.confidence) / 2
  const limit = (tail: 'lower' | 'upper') => Math.sqrt(ssLoaf / chiSquaredQuantile({ p, df: dfLoaf, tail }))
  return {
    method: 'anova-moments',
    mean: grand,
    block,
    batch: varianceComponent(batchVariance, dfBatch),
    loaf: { ...varianceComponent(msLoaf, dfLoaf), low: limit('upper'), high: limit('lower') },
  }
}

function weightedMean(batches: readonly BatchMean[]): number {
  const first = batches[0]!.mean
  return (
    first +
    sum(batches.map((batch) => batch.loafCount * (batch.mean - first))) / sum(batches.map((batch) => batch.loafCount))
  )
}

function sum(values: readonly number[]): number {
  return values.reduce((total, value) => total + value, 0)
}
