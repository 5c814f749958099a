import { mustBeReading, mustVary } from '../checks'
import { normalQuantile } from '../distributions/normal-quantile'
import { ownVariation } from '../analysis/own-variation'
import { cvPct } from './cv-pct'
import { groupBy } from '../group-by'
import { summariseValues } from './summarise-values'

export type Repeatability = {
  method: 'anova-moments'
  grandMean: number
  /** Within a batch, with its chi-squared interval. */
  repeatabilitySd: number
  df: number
  low: number
  high: number
  confidence: number
  /** Between batches, beyond what repeatability explains; zero where the estimate is negative, and then said. */
  betweenSd: number
  betweenHeldAtZero: boolean
  /** Of a single value from any batch. */
  intermediateSd: number
  /** Values in a batch as they count when batches differ in size: (n − Σ nᵢ² / n) / (batches − 1). */
  effectiveBatchSize: number
  /** Two values of one batch differ by more than this one time in twenty. */
  repeatabilityLimit: number
  /** Share of the variance that lies between batches, 0 to 1. */
  betweenShare: number
  /** 100 × SD / mean; null where a batch mean is not well above zero. `pooledCvPct`: root mean square over batches, by df. */
  repeatabilityCvPct: number | null
  intermediateCvPct: number | null
  pooledCvPct: number | null
}

/**
 * Repeatability within batches and the spread between them, from several values in each batch.
 * @param rows batch and value; two batches or more, at least one with two values; batches may differ in size
 * @param confidence of the interval of the repeatability SD, 0.5 to 0.9999
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range'; 'not-possible' with reason 'one-loaf-per-batch' or 'zero-variance'
 * Source: ISO 5725-2:2019 (repeatability and intermediate precision); limit 1.96 √2 s, ISO 5725-6:1994, section 4.
 */
export function repeatability(q: { rows: readonly { batch: string; y: number }[]; confidence: number }): Repeatability {
  const readings = q.rows.map(({ batch, y }, i) => ({
    arm: '',
    batch,
    loaf: String(i),
    value: mustBeReading(`rows[${i}].y`, y),
  }))
  const { mean: grandMean, batch, loaf } = ownVariation({ readings, confidence: q.confidence })
  mustVary(
    'rows',
    loaf.sd,
    q.rows.reduce((most, { y }) => Math.max(most, Math.abs(y)), 0),
  )
  const intermediateSd = Math.hypot(loaf.sd, batch.sd)

  const batches = [...groupBy(q.rows, (row) => row.batch).values()].map((rows) =>
    summariseValues(
      'rows',
      rows.map(({ y }) => y),
    ),
  )
  const n = q.rows.length
  const ofEach = batches.map(({ mean, sumSquares }) => cvPct(Math.sqrt(sumSquares), mean))
  const each = ofEach.filter((value) => value !== null)
  const known = each.length === batches.length
  return {
    method: 'anova-moments',
    grandMean,
    repeatabilitySd: loaf.sd,
    df: loaf.df,
    low: loaf.low,
    high: loaf.high,
    confidence: q.confidence,
    betweenSd: batch.sd,
    betweenHeldAtZero: batch.heldAtZero,
    intermediateSd,
    effectiveBatchSize: (n - batches.reduce((sum, { count }) => sum + count ** 2, 0) / n) / (batches.length - 1),
    repeatabilityLimit: normalQuantile({ p: 0.975, tail: 'lower' }) * Math.SQRT2 * loaf.sd,
    betweenShare: (batch.sd / intermediateSd) ** 2,
    repeatabilityCvPct: known ? cvPct(loaf.sd, grandMean) : null,
    intermediateCvPct: known ? cvPct(intermediateSd, grandMean) : null,
    pooledCvPct: known ? Math.sqrt(each.reduce((sum, value) => sum + value * value, 0) / loaf.df) : null,
  }
}
