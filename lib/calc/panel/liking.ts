import { type Comparison, adjustAgainstControl } from '../analysis/adjust-against-control'
import { mustBeWhole, mustBeWithin } from '../checks'
import { tQuantile } from '../distributions/t-quantile'
import { CalcError } from '../error'
import { scoresByTaster } from './scores-by-taster'
import type { ScoreRow } from './types'

export type Liking = {
  tasters: number
  /** Limits of each mean from its own spread; null where all tasters gave one score, which says nothing of others. */
  means: { sample: string; mean: number; sd: number; low: number | null; high: number | null }[]
  method: 'student-t' | 'dunnett-product' | 'dunnett-lattice'
  df: number
  criticalValue: number
  /** Sample minus control within tasters, with how many liked which better: a mean can hide two groups. */
  comparisons: (Pick<Comparison, 'estimate' | 'se' | 't' | 'pAdjusted'> & {
    sample: string
    low: number
    high: number
    preferSampleShare: number
    preferControlShare: number
    alikeShare: number
  })[]
  warnings: { code: 'two-groups' | 'all-scores-alike'; sample: string }[]
}

/** From a third of the tasters on either side on, a mean stands for nobody; the share is our own choice. */
const GROUP_SHARE = 1 / 3

/**
 * Liking on the nine-point scale: mean and interval of each sample, and each sample against the control with tasters as
 * blocks (each taster's own level is taken out), adjusted by Dunnett; with one sample that is the paired t test.
 * The error is pooled over samples, so it takes differences between any two as equally variable.
 * @param scores 1 (dislike extremely) to 9 (like extremely), whole, as scoresByTaster; @param control name of the control
 * @param confidence joint for the comparisons, single for the means, 0.5 to 0.9999; two-sided
 * @throws CalcError as scoresByTaster; 'not-possible' with reason 'unknown-sample', or 'zero-variance' where nothing but level
 * differs between tasters
 * Source: scale: Peryam & Pilgrim (1957), Food Technology 11; blocks: Fisher (1935); Dunnett (1955), JASA 50.
 * @example see tests/published/panel-scipy.test.ts
 */
export function liking(q: { scores: readonly ScoreRow[]; control: string; confidence: number }): Liking {
  mustBeWithin('confidence', q.confidence, { min: 0.5, max: 0.9999 })
  q.scores.forEach(({ score }, i) => mustBeWhole(`scores[${i}].score`, score, { min: 1, max: 9 }))
  const { samples, rows } = scoresByTaster(q.scores)
  const control = samples.indexOf(q.control)
  if (control < 0) throw new CalcError('not-possible', { field: 'control', value: q.control, reason: 'unknown-sample' })
  const [n, k] = [rows.length, samples.length]
  const means = samples.map((_, j) => mean(rows.map((row) => row[j]!)))
  const t = tQuantile({ p: (1 - q.confidence) / 2, df: n - 1, tail: 'upper' })
  const described = samples.map((sample, j) => {
    const sd = Math.sqrt(rows.reduce((sum, row) => sum + (row[j]! - means[j]!) ** 2, 0) / (n - 1))
    // scores are whole, so those that differ at all have a spread far above rounding
    const alike = rows.every((row) => row[j] === rows[0]![j])
    const half = (t * sd) / Math.sqrt(n)
    return { sample, mean: means[j]!, sd, low: alike ? null : means[j]! - half, high: alike ? null : means[j]! + half }
  })

  const df = (n - 1) * (k - 1)
  const grand = mean(means)
  const residual = rows.reduce((sum, row) => {
    const level = mean(row)
    return sum + row.reduce((part, score, j) => part + (score - level - means[j]! + grand) ** 2, 0)
  }, 0)
  if (residual < 1e-9)
    throw new CalcError('not-possible', { field: 'scores', value: residual, reason: 'zero-variance' })
  const se = Math.sqrt((2 * residual) / df / n)
  const others = samples.map((_, j) => j).filter((j) => j !== control)
  const adjusted = adjustAgainstControl({
    differences: others.map((j) => ({ arm: samples[j]!, estimate: means[j]! - means[control]!, se })),
    correlation: others.map((_, i) => others.map((__, j) => (i === j ? 1 : 0.5))),
    df,
    confidence: q.confidence,
    alternative: 'two-sided',
  })
  const comparisons = adjusted.comparisons.map(({ estimate, t: ratio, pAdjusted }, i) => {
    const share = (sign: number) =>
      rows.filter((row) => Math.sign(row[others[i]!]! - row[control]!) === sign).length / n
    const half = adjusted.criticalValue * se
    return {
      sample: samples[others[i]!]!,
      estimate,
      se,
      t: ratio,
      pAdjusted,
      low: estimate - half,
      high: estimate + half,
      preferSampleShare: share(1),
      preferControlShare: share(-1),
      alikeShare: share(0),
    }
  })
  return {
    tasters: n,
    means: described,
    method: adjusted.method,
    df,
    criticalValue: adjusted.criticalValue,
    comparisons,
    warnings: [
      ...comparisons
        .filter((one) => Math.min(one.preferSampleShare, one.preferControlShare) >= GROUP_SHARE)
        .map(({ sample }) => ({ code: 'two-groups' as const, sample })),
      ...described
        .filter(({ low }) => low === null)
        .map(({ sample }) => ({ code: 'all-scores-alike' as const, sample })),
    ],
  }
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length
}
