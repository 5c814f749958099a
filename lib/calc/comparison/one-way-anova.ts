import { mustVary } from '../checks'
import { CalcError } from '../error'
import { fTail } from '../distributions/f-tail'
import { type Interval, meanInterval } from './mean-interval'
import { type ArmRow, summariseArms } from './summarise-arms'

export type ArmMeanInterval = { arm: string; count: number; mean: number } & Interval

export type OneWayAnova = {
  method: 'one-way-anova'
  sumSquaresBetween: number
  sumSquaresWithin: number
  meanSquareBetween: number
  meanSquareWithin: number
  df1: number
  df2: number
  f: number
  p: number
  /** Between arms, of the whole sum of squares, 0 to 1. */
  explainedShare: number
  residualSd: number
  grandMean: number
  confidence: number
  /** Intervals from the pooled variance, each by itself. */
  arms: ArmMeanInterval[]
}

/**
 * One-way analysis of variance: do the means of the arms differ, if all arms vary alike?
 * @param rows one per experimental unit (a dough, not its loaves), in the measure's own unit; two arms or more
 * @param confidence of the intervals of the means, 0.5 to 0.9999
 * @throws CalcError as summariseArms; 'not-possible' with reason 'no-residual-df' or 'zero-variance'
 * Source: Fisher (1925), Statistical Methods for Research Workers, chapter VII; sums of squares in two passes.
 * @example oneWayAnova({ rows: [{ arm: 'A', y: 1 }, { arm: 'A', y: 3 }, { arm: 'B', y: 5 }, { arm: 'B', y: 7 }], confidence: 0.95 }).f // 8
 */
export function oneWayAnova(q: { rows: readonly ArmRow[]; confidence: number }): OneWayAnova {
  const { origin, largest, count, sumSquares, arms } = summariseArms(q.rows, 1)
  const [df1, df2] = [arms.length - 1, count - arms.length]
  if (df2 < 1) throw new CalcError('not-possible', { field: 'rows', value: count, reason: 'no-residual-df' })
  const residualSd = mustVary('rows', Math.sqrt(sumSquares / df2), largest)
  const grand = arms.reduce((sum, arm) => sum + arm.count * arm.offset, 0) / count
  const between = arms.reduce((sum, arm) => sum + arm.count * (arm.offset - grand) ** 2, 0)
  const meanSquareWithin = sumSquares / df2
  const f = between / df1 / meanSquareWithin
  return {
    method: 'one-way-anova',
    sumSquaresBetween: between,
    sumSquaresWithin: sumSquares,
    meanSquareBetween: between / df1,
    meanSquareWithin,
    df1,
    df2,
    f,
    p: fTail({ f, df1, df2, tail: 'upper' }),
    explainedShare: between / (between + sumSquares),
    residualSd,
    grandMean: origin + grand,
    confidence: q.confidence,
    arms: arms.map(({ arm, count: n, mean }) => ({
      arm,
      count: n,
      mean,
      ...meanInterval({ estimate: mean, se: residualSd / Math.sqrt(n), df: df2, confidence: q.confidence }),
    })),
  }
}
