import { mustMatchLength } from '../checks'
import { midRanks } from '../comparison/mid-ranks'
import { normalTail } from '../distributions/normal-tail'
import { CalcError } from '../error'
import { pageDistribution } from './page-distribution'
import { scoresByTaster } from './scores-by-taster'
import type { ScoreRow } from './types'

export type PageTrend = {
  tasters: number
  rankSums: { sample: string; rankSum: number }[]
  statistic: number
  expected: number
  variance: number
  z: number
  /** One-sided; neither corrected for ties nor for continuity. */
  pNormal: number
  /** P(L ≥ statistic) over all rankings; null with ties, or where there are too many rankings to count. */
  pExact: number | null
  warnings: ('ties' | 'too-many-to-count')[]
}

/** Steps of the count, n² times the range of one taster squared; a few tenths of a second. */
const MOST_STEPS = 2e8
const MOST_COUNTED_SAMPLES = 10

/**
 * Page's test for an order that was predicted: L = Σ j Rⱼ, samples numbered as predicted, ranks summed over tasters.
 * @param scores as scoresByTaster; higher scores are predicted for later samples
 * @param order every sample once, lowest predicted first
 * @throws CalcError as scoresByTaster; 'wrong-shape' | 'duplicate' | 'not-possible' with reason 'unknown-sample' for `order`
 * Source: Page (1963), JASA 58.
 * @example see tests/published/ranking-tests.test.ts: 8 tasters, 4 samples, L 229, z 3.55
 */
export function pageTrend(q: { scores: readonly ScoreRow[]; order: readonly string[] }): PageTrend {
  const { samples, rows } = scoresByTaster(q.scores)
  mustMatchLength('order', q.order, samples.length)
  const columns = q.order.map((sample, j) => {
    if (q.order.indexOf(sample) !== j) throw new CalcError('duplicate', { field: `order[${j}]`, value: sample })
    const column = samples.indexOf(sample)
    if (column < 0)
      throw new CalcError('not-possible', { field: `order[${j}]`, value: sample, reason: 'unknown-sample' })
    return column
  })
  const [n, k] = [rows.length, samples.length]
  const ranked = rows.map((row) =>
    midRanks(
      'scores',
      columns.map((column) => row[column]!),
    ),
  )
  const sums = q.order.map((_, j) => ranked.reduce((sum, { ranks }) => sum + ranks[j]!, 0))
  const statistic = sums.reduce((sum, rankSum, j) => sum + (j + 1) * rankSum, 0)
  const expected = (n * k * (k + 1) ** 2) / 4
  const variance = (n * k * k * (k + 1) * (k * k - 1)) / 144
  const z = (statistic - expected) / Math.sqrt(variance)
  const tied = ranked.some(({ tieSum }) => tieSum > 0)
  const tooMany = k > MOST_COUNTED_SAMPLES || (n * ((k ** 3 - k) / 6)) ** 2 > MOST_STEPS
  return {
    tasters: n,
    rankSums: q.order.map((sample, j) => ({ sample, rankSum: sums[j]! })),
    statistic,
    expected,
    variance,
    z,
    pNormal: normalTail({ z, tail: 'upper' }),
    pExact: tied || tooMany ? null : pageDistribution({ tasters: n, samples: k, statistic }),
    warnings: [...(tied ? (['ties'] as const) : []), ...(tooMany ? (['too-many-to-count'] as const) : [])],
  }
}
