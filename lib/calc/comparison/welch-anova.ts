import { mustVary } from '../checks'
import { fTail } from '../distributions/f-tail'
import { meanInterval } from './mean-interval'
import type { ArmMeanInterval } from './one-way-anova'
import { type ArmRow, summariseArms } from './summarise-arms'

export type WelchAnova = {
  method: 'welch-anova'
  df1: number
  df2: number
  f: number
  p: number
  confidence: number
  /** Intervals from each arm's own variance. */
  arms: ArmMeanInterval[]
}

/**
 * Welch's analysis of variance: do the means of the arms differ, where arms need not vary alike?
 * @param rows one per experimental unit, in the measure's own unit; two arms or more, two values or more in each
 * @param confidence of the intervals of the means, 0.5 to 0.9999
 * @throws CalcError as summariseArms; 'not-possible' with reason 'zero-variance' where an arm's values are all alike
 * Source: Welch (1951), Biometrika 38.
 * @example welchAnova({ rows: [{ arm: 'A', y: 1 }, { arm: 'A', y: 3 }, { arm: 'B', y: 5 }, { arm: 'B', y: 7 }], confidence: 0.95 }).f // 8
 */
export function welchAnova(q: { rows: readonly ArmRow[]; confidence: number }): WelchAnova {
  const { largest, arms } = summariseArms(q.rows, 2)
  const k = arms.length
  const weights = arms.map(({ arm, count, sumSquares }) => {
    const sd = mustVary(`rows (${arm})`, Math.sqrt(sumSquares / (count - 1)), largest)
    return count / (sd * sd)
  })
  const whole = weights.reduce((sum, w) => sum + w, 0)
  const centre = arms.reduce((sum, { offset }, i) => sum + (weights[i]! / whole) * offset, 0)
  const between = arms.reduce((sum, { offset }, i) => sum + weights[i]! * (offset - centre) ** 2, 0) / (k - 1)
  const unsure = arms.reduce((sum, { count }, i) => sum + (1 - weights[i]! / whole) ** 2 / (count - 1), 0) / (k * k - 1)
  const f = between / (1 + 2 * (k - 2) * unsure)
  const [df1, df2] = [k - 1, 1 / (3 * unsure)]
  return {
    method: 'welch-anova',
    df1,
    df2,
    f,
    p: fTail({ f, df1, df2, tail: 'upper' }),
    confidence: q.confidence,
    arms: arms.map(({ arm, count, mean, sumSquares }) => {
      const se = Math.sqrt(sumSquares / (count - 1) / count)
      return { arm, count, mean, ...meanInterval({ estimate: mean, se, df: count - 1, confidence: q.confidence }) }
    }),
  }
}
