import { CalcError } from '../error'
import { chiSquaredTail } from '../distributions/chi-squared-tail'
import { midRanks } from './mid-ranks'
import { type ArmRow, summariseArms } from './summarise-arms'

export type KruskalWallis = {
  method: 'kruskal-wallis-chi-squared'
  h: number
  df: number
  p: number
  arms: { arm: string; count: number; meanRank: number }[]
  /** `small-arms`: fewer than five values in an arm, where the chi-squared p is rough. */
  warnings: 'small-arms'[]
}

/**
 * Kruskal–Wallis test on ranks, corrected for ties: a cross-check that does not lean on the normal distribution.
 * It compares ranks and so has no interval in the measure's unit; p is from the chi-squared approximation.
 * @param rows one per experimental unit; two arms or more
 * @throws CalcError as summariseArms; 'not-possible' with reason 'zero-variance' when all values are alike
 * Source: Kruskal & Wallis (1952), JASA 47, sections 2.2 and 5.3.
 * @example kruskalWallis({ rows: [{ arm: 'A', y: 1 }, { arm: 'A', y: 2 }, { arm: 'B', y: 3 }, { arm: 'B', y: 4 }] }).h // 2.4
 */
export function kruskalWallis(q: { rows: readonly ArmRow[] }): KruskalWallis {
  const { arms, count: n } = summariseArms(q.rows, 1)
  const { ranks, tieSum } = midRanks(
    'rows',
    q.rows.map((row) => row.y),
  )
  const untied = 1 - tieSum / (n ** 3 - n)
  if (untied <= 0) throw new CalcError('not-possible', { field: 'rows', value: n, reason: 'zero-variance' })
  const rankSums = new Map<string, number>()
  q.rows.forEach(({ arm }, i) => rankSums.set(arm, (rankSums.get(arm) ?? 0) + ranks[i]!))
  const ranked = arms.map(({ arm, count }) => ({ arm, count, meanRank: rankSums.get(arm)! / count }))
  const between = ranked.reduce((sum, { count, meanRank }) => sum + count * (meanRank - (n + 1) / 2) ** 2, 0)
  const h = (12 * between) / (n * (n + 1)) / untied
  const df = arms.length - 1
  return {
    method: 'kruskal-wallis-chi-squared',
    h,
    df,
    p: chiSquaredTail({ x: h, df, tail: 'upper' }),
    arms: ranked,
    warnings: arms.some(({ count }) => count < 5) ? ['small-arms'] : [],
  }
}
