import { mustBeWithin } from '../checks'
import { midRanks } from '../comparison/mid-ranks'
import { chiSquaredTail } from '../distributions/chi-squared-tail'
import { fTail } from '../distributions/f-tail'
import { CalcError } from '../error'
import { leastRankDifference } from './least-rank-difference'
import { scoresByTaster } from './scores-by-taster'
import type { ScoreRow } from './types'

export type Friedman = {
  tasters: number
  rankSums: { sample: string; rankSum: number }[]
  chiSquared: number
  df: number
  /** 0 below the smallest double, as the distribution is. */
  p: number
  /** Iman and Davenport's F, less cautious than chi-squared; null where all tasters fully agree, F being infinite. */
  f: number | null
  dfNumerator: number
  dfDenominator: number
  pOfF: number | null
  leastDifference: number
  /** Every pair; significant where the rank sums differ by the least difference or more. Read only when p is small. */
  pairs: { sample: string; other: string; difference: number; significant: boolean }[]
  warnings: ('ties' | 'full-agreement')[]
}

/**
 * Friedman's test on ranks within tasters, corrected for ties, with Iman and Davenport's F and least significant rank
 * differences. Rank 1 is the lowest score.
 * @param scores scores or ranks, each taster once for each sample, as scoresByTaster; @param alpha of the pairs, 1e-6 ≤ α ≤ 0.5
 * @throws CalcError as scoresByTaster; 'not-possible' with reason 'all-tied' where no taster tells any two apart
 * Source: Friedman (1937), JASA 32; ties and differences: ISO 8587; F: Iman & Davenport (1980), Comm. Stat. A9.
 * @example see tests/published/iso-8587-ranking.test.ts: 8 tasters, 5 samples, rank sums 17 31 32 23 17, chi-squared 10.60
 */
export function friedman(q: { scores: readonly ScoreRow[]; alpha: number }): Friedman {
  mustBeWithin('alpha', q.alpha, { min: 1e-6, max: 0.5 })
  const { samples, rows } = scoresByTaster(q.scores)
  const [n, k] = [rows.length, samples.length]
  const ranked = rows.map((row) => midRanks('scores', row))
  const tieSum = ranked.reduce((sum, row) => sum + row.tieSum, 0)
  const sums = samples.map((_, j) => ranked.reduce((sum, { ranks }) => sum + ranks[j]!, 0))
  const most = n * (k - 1)
  const untied = 1 - tieSum / (n * (k ** 3 - k))
  // ranks are halves, so tied rows leave exactly nothing
  if (tieSum === n * (k ** 3 - k)) throw new CalcError('not-possible', { field: 'scores', reason: 'all-tied' })
  const squares = sums.reduce((sum, rankSum) => sum + (rankSum - (n * (k + 1)) / 2) ** 2, 0)
  const chiSquared = (12 * squares) / (n * k * (k + 1)) / untied
  const agreed = chiSquared >= most * (1 - 1e-12)
  const [dfNumerator, dfDenominator] = [k - 1, (n - 1) * (k - 1)]
  const f = agreed ? null : ((n - 1) * chiSquared) / (most - chiSquared)
  const leastDifference = leastRankDifference({ tasters: n, samples: k, alpha: q.alpha })
  return {
    tasters: n,
    rankSums: samples.map((sample, j) => ({ sample, rankSum: sums[j]! })),
    chiSquared,
    df: k - 1,
    p: chiSquaredTail({ x: chiSquared, df: k - 1, tail: 'upper' }),
    f,
    dfNumerator,
    dfDenominator,
    pOfF: f === null ? null : fTail({ f, df1: dfNumerator, df2: dfDenominator, tail: 'upper' }),
    leastDifference,
    pairs: samples.flatMap((sample, i) =>
      samples.slice(i + 1).map((other, step) => {
        const difference = sums[i + 1 + step]! - sums[i]!
        return { sample, other, difference, significant: Math.abs(difference) >= leastDifference }
      }),
    ),
    warnings: [...(tieSum > 0 ? (['ties'] as const) : []), ...(agreed ? (['full-agreement'] as const) : [])],
  }
}
