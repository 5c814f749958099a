import { mustBeReading, mustBeWithin, mustVary } from '../checks'
import { CalcError } from '../error'
import { fTail } from '../distributions/f-tail'
import { tTail } from '../distributions/t-tail'
import { type LeastSquaresFit, leastSquares } from '../analysis/least-squares'
import { centreInBlocks } from './centre-in-blocks'
import { groupBy } from '../group-by'
import { type Interval, meanInterval } from './mean-interval'
import { summariseArms } from './summarise-arms'
import type { FTest } from './types'

const MOST_ARMS = 20

type Row = { arm: string; block?: string; x: number; y: number }

export type Ancova = {
  method: 'ancova' | 'ancova-in-blocks'
  /** Mean of x over all rows, where the adjusted means are taken. */
  covariateMean: number
  /** Change of y with one unit of x, within arms and blocks. */
  slope: { estimate: number } & Interval
  residualSd: number
  residualDf: number
  /** Arm after covariate and blocks; covariate after arm and blocks. */
  armTest: FTest
  covariateTest: FTest
  /** Do slopes differ between arms? Null where too few values can tell. */
  interactionTest: FTest | null
  confidence: number
  adjustedMeans: ({ arm: string; estimate: number } & Interval)[]
  /** Arm minus control at one and the same x; each by itself, not adjusted for several arms. */
  differences: ({ arm: string; estimate: number; t: number; p: number } & Interval)[]
  /** `beyond-covariate`: an arm's own x lies wholly on one side of the mean of x, so that its adjusted mean is extrapolated. */
  warnings: ('beyond-covariate' | 'no-interaction-test')[]
}

/**
 * Analysis of covariance: arms compared at one value of a condition x, with one slope for all arms. Only for a condition
 * that the arm itself does not change; otherwise the adjustment takes part of the effect away.
 * @param rows one per experimental unit, x and y in their own units; 2 to 20 arms; `block` on all or on none
 * @param control the arm that others are compared with; @param confidence 0.5 to 0.9999
 * @throws CalcError as summariseArms; 'out-of-range'; 'wrong-shape' with reason 'block-on-some-rows' or 'unknown-arm';
 * 'not-possible' with reason 'no-residual-df', 'arm-confounded-with-block', 'covariate-confounded' or 'zero-variance'
 * Source: Cochran & Cox (1957), Experimental Designs, section 3.8; Snedecor & Cochran (1980), Statistical Methods, chapter 18.
 */
export function ancova(q: { rows: readonly Row[]; control: string; confidence: number }): Ancova {
  const summary = summariseArms(q.rows, 1)
  const others = summary.arms.map(({ arm }) => arm).filter((arm) => arm !== q.control)
  const m = others.length
  if (m === summary.arms.length)
    throw new CalcError('wrong-shape', { field: 'control', value: q.control, reason: 'unknown-arm' })
  mustBeWithin('arms', m + 1, { max: MOST_ARMS })
  const blockNames = blocksOf(q.rows)

  const n = q.rows.length
  const firstX = mustBeReading('rows[0].x', q.rows[0]!.x)
  const x = q.rows.map((row, i) => mustBeReading(`rows[${i}].x`, row.x) - firstX)
  const meanX = x.reduce((sum, value) => sum + value, 0) / n
  const y = q.rows.map((row) => row.y - summary.origin)
  const armColumns = others.map((arm) => q.rows.map((row) => (row.arm === arm ? 1 : 0)))
  const fromMean = x.map((value) => value - meanX)
  const bent = armColumns.map((column) => column.map((inArm, i) => inArm * fromMean[i]!))
  const centred = centreInBlocks([...armColumns, x, y, ...bent], blockNames)
  const column = (...list: number[]) => q.rows.map((_, i) => list.map((j) => centred.columns[j]![i]!))
  const centredY = centred.columns[m + 1]!
  const arms = others.map((_, k) => k)
  const b = centred.blocks.length
  const residualDf = n - b - m - 1
  if (residualDf < 1) throw new CalcError('not-possible', { field: 'rows', value: n, reason: 'no-residual-df' })

  const fit = fitOrRefuse(column(...arms, m), centredY, m)
  const residualSd = mustVary('rows', Math.sqrt(fit.residualSumSquares / residualDf), summary.largest)
  const xFirst = leastSquares({ x: column(m, ...arms), y: centredY })
  const test = (sumSquares: number, df1: number, errorSumSquares: number, df2: number): FTest => {
    const f = sumSquares / df1 / (errorSumSquares / df2)
    return { f, df1, df2, p: fTail({ f, df1, df2, tail: 'upper' }) }
  }
  const squares = (effects: readonly number[]) => effects.reduce((sum, value) => sum + value * value, 0)
  const interactionTest = (): FTest | null => {
    if (residualDf - m < 1) return null
    const full = fitOrNothing(column(...arms, m, ...arms.map((k) => m + 2 + k)), centredY)
    if (!full) return null
    const sd = Math.sqrt(full.residualSumSquares / (residualDf - m))
    mustVary('rows', sd, summary.largest)
    return test(squares(full.effects.slice(m + 1, 2 * m + 1)), m, full.residualSumSquares, residualDf - m)
  }

  const interval = (l: readonly number[], freeVariance = 0) => {
    const estimate = l.reduce((sum, value, j) => sum + value * fit.coefficients[j]!, 0)
    const variance = l.reduce(
      (sum, a, i) => sum + a * l.reduce((inner, c, j) => inner + c * fit.unscaledCovariance[i]![j]!, 0),
      freeVariance,
    )
    return {
      estimate,
      ...meanInterval({ estimate, se: residualSd * Math.sqrt(variance), df: residualDf, confidence: q.confidence }),
    }
  }
  const overBlocks = (j: number) => centred.blocks.reduce((sum, { means }) => sum + means[j]! / b, 0)
  const freeVariance = centred.blocks.reduce((sum, { count }) => sum + 1 / count, 0) / (b * b)
  const adjusted = (arm: string) => {
    const shift = interval(
      [...others.map((other, k) => (other === arm ? 1 : 0) - overBlocks(k)), meanX - overBlocks(m)],
      freeVariance,
    )
    const base = summary.origin + overBlocks(m + 1)
    return { arm, ...shift, estimate: base + shift.estimate, low: base + shift.low, high: base + shift.high }
  }
  const interaction = interactionTest()
  const apart = [...groupBy(q.rows, (row) => row.arm).values()].some((rows) => {
    const sides = rows.map((row) => Math.sign(row.x - firstX - meanX))
    return sides.every((side) => side > 0) || sides.every((side) => side < 0)
  })
  return {
    method: b > 1 ? 'ancova-in-blocks' : 'ancova',
    covariateMean: firstX + meanX,
    slope: interval([...arms.map(() => 0), 1]),
    residualSd,
    residualDf,
    armTest: test(squares(xFirst.effects.slice(1, m + 1)), m, fit.residualSumSquares, residualDf),
    covariateTest: test(fit.effects[m]! ** 2, 1, fit.residualSumSquares, residualDf),
    interactionTest: interaction,
    confidence: q.confidence,
    adjustedMeans: [q.control, ...others].map(adjusted),
    differences: others.map((arm, k) => {
      const difference = interval([...arms.map((j) => (j === k ? 1 : 0)), 0])
      const t = difference.estimate / difference.se
      return { arm, ...difference, t, p: Math.min(1, 2 * tTail({ t: Math.abs(t), df: residualDf, tail: 'upper' })) }
    }),
    warnings: [
      ...(apart ? (['beyond-covariate'] as const) : []),
      ...(interaction ? [] : (['no-interaction-test'] as const)),
    ],
  }
}

function blocksOf(rows: readonly Row[]): string[] {
  const named = rows.filter((row) => row.block !== undefined).length
  if (named > 0 && named < rows.length) {
    throw new CalcError('wrong-shape', { field: 'rows', value: named, min: rows.length, reason: 'block-on-some-rows' })
  }
  return rows.map((row) => row.block ?? '')
}

function fitOrNothing(x: number[][], y: number[]): LeastSquaresFit | null {
  try {
    return leastSquares({ x, y })
  } catch (error) {
    if (error instanceof CalcError && error.facts.reason === 'rank-deficient') return null
    throw error
  }
}

/** The column after those of the arms is the covariate. */
function fitOrRefuse(x: number[][], y: number[], armCount: number): LeastSquaresFit {
  const fit = fitOrNothing(x, y)
  if (fit) return fit
  const reason = fitOrNothing(
    x.map((row) => row.slice(0, armCount)),
    y,
  )
    ? 'covariate-confounded'
    : 'arm-confounded-with-block'
  throw new CalcError('not-possible', { field: 'rows', reason })
}
