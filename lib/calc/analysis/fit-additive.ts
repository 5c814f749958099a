import { mustBeWithin, mustVary } from '../checks'
import { CalcError } from '../error'
import { fTail } from '../distributions/f-tail'
import { tQuantile } from '../distributions/t-quantile'
import { tTail } from '../distributions/t-tail'
import { type LeastSquaresFit, leastSquares } from './least-squares'

/** Rows times columns squared: some three seconds of work. */
const MOST_WORK = 1e8

export type AnovaRow = {
  source: string
  df: number
  sumSquares: number
  meanSquare: number
  f: number | null
  p: number | null
}
export type ArmMean = { arm: string; estimate: number; se: number; df: number; low: number; high: number }
export type Difference = { arm: string; estimate: number; se: number; df: number; t: number; p: number }

export type AdditiveFit = {
  method: { model: 'arm' | 'arm-and-block'; estimation: 'least-squares' }
  n: number
  residualDf: number
  residualSd: number
  /** Block before arm, arm after block, residual. The block row is left out without blocks. */
  anova: AnovaRow[]
  /** Block after arm; null without blocks. */
  blockAfterArm: AnovaRow | null
  /** Least-squares means: averaged over blocks with equal weight; unadjusted intervals at `confidence`. */
  armMeans: ArmMean[]
  /** Arm minus control, two-sided unadjusted p. */
  differences: Difference[]
  /** Value minus fitted value, in the order of the rows. */
  residuals: number[]
  /** Correlation of the differences, in their order. */
  differenceCorrelation: number[][]
}

/**
 * Fixed effects of arm, or of arm and complete or broken blocks, by least squares; any cell may be missing or repeated.
 * @param rows one row per experimental unit; `block` on all or on none
 * @param arms names, the control first, at least two, each in the rows
 * @param confidence of the intervals of the means, 0.5 to 0.9999
 * @throws CalcError 'not-finite' | 'wrong-shape' | 'duplicate'; 'out-of-range' with reason 'too-large' (10,000 rows
 * take 100 arms and blocks together); 'not-possible' with reason 'one-arm',
 * 'arm-confounded-with-block', 'no-residual-df' or 'zero-variance' (residual SD below 1e-14 of the largest value)
 * Source: Searle (1971), Linear Models, chapter 7; least-squares means after Harvey (1960).
 */
export function fitAdditive(q: {
  rows: readonly { arm: string; block?: string; y: number }[]
  arms: readonly string[]
  confidence: number
}): AdditiveFit {
  mustBeWithin('confidence', q.confidence, { min: 0.5, max: 0.9999 })
  mustNameArms(q.arms, q.rows)
  const blocks = blocksOf(q.rows)
  const armColumns = q.arms.slice(1)
  const blockColumns = blocks.slice(1)
  const n = q.rows.length
  const residualDf = n - 1 - armColumns.length - blockColumns.length

  const work = n * (n - residualDf) ** 2
  if (work > MOST_WORK)
    throw new CalcError('out-of-range', { field: 'rows', value: work, max: MOST_WORK, reason: 'too-large' })

  // centred on one value, so that a large common part costs no digits
  const origin = q.rows[0]!.y
  const y = q.rows.map((row, i) => mustBeWithin(`rows[${i}].y`, row.y) - origin)
  const armPart = q.rows.map((row) => armColumns.map((arm) => (row.arm === arm ? 1 : 0)))
  const blockPart = q.rows.map((row) => blockColumns.map((block) => (row.block === block ? 1 : 0)))
  if (residualDf < 1) throw new CalcError('not-possible', { field: 'rows', value: n, reason: 'no-residual-df' })
  const x = armPart.map((part, i) => [1, ...blockPart[i]!, ...part])
  const fit = fitOrRefuse(x, y)
  const residuals = x.map((row, i) => y[i]! - row.reduce((sum, value, j) => sum + value * fit.coefficients[j]!, 0))
  const largest = q.rows.reduce((most, row) => Math.max(most, Math.abs(row.y)), 0)
  const residualSd = mustVary('rows', Math.sqrt(fit.residualSumSquares / residualDf), largest)

  const meanSquare = residualSd * residualSd
  const tested = (source: string, sumSquares: number, df: number): AnovaRow => {
    const f = sumSquares / df / meanSquare
    return {
      source,
      df,
      sumSquares,
      meanSquare: sumSquares / df,
      f,
      p: fTail({ f, df1: df, df2: residualDf, tail: 'upper' }),
    }
  }
  const squares = (effects: readonly number[], from: number, count: number) =>
    effects.slice(from, from + count).reduce((sum, value) => sum + value * value, 0)
  const b = blockColumns.length
  const armRow = tested('arm', squares(fit.effects, 1 + b, armColumns.length), armColumns.length)
  const residualRow: AnovaRow = {
    source: 'residual',
    df: residualDf,
    sumSquares: fit.residualSumSquares,
    meanSquare,
    f: null,
    p: null,
  }
  const blockRow = b > 0 ? [tested('block', squares(fit.effects, 1, b), b)] : []
  let blockAfterArm: AnovaRow | null = null
  if (b > 0) {
    const turned = leastSquares({ x: armPart.map((part, i) => [1, ...part, ...blockPart[i]!]), y })
    blockAfterArm = tested('block', squares(turned.effects, 1 + armColumns.length, b), b)
  }

  const variance = (l: readonly number[]) => Math.max(0, quadratic(l, fit.unscaledCovariance))
  const t = tQuantile({ p: (1 - q.confidence) / 2, df: residualDf, tail: 'upper' })
  const armMeans = q.arms.map((arm): ArmMean => {
    const l = [1, ...blockColumns.map(() => 1 / blocks.length), ...armColumns.map((other) => (other === arm ? 1 : 0))]
    const estimate = origin + l.reduce((sum, value, j) => sum + value * fit.coefficients[j]!, 0)
    const se = residualSd * Math.sqrt(variance(l))
    return { arm, estimate, se, df: residualDf, low: estimate - t * se, high: estimate + t * se }
  })
  const differences = armColumns.map((arm, i): Difference => {
    const estimate = fit.coefficients[1 + b + i]!
    const se = residualSd * Math.sqrt(fit.unscaledCovariance[1 + b + i]![1 + b + i]!)
    const ratio = estimate / se
    return {
      arm,
      estimate,
      se,
      df: residualDf,
      t: ratio,
      p: Math.min(1, 2 * tTail({ t: Math.abs(ratio), df: residualDf, tail: 'upper' })),
    }
  })
  const differenceCorrelation = armColumns.map((_, i) =>
    armColumns.map((__, j) => {
      const covariance = (a: number, c: number) => fit.unscaledCovariance[1 + b + a]![1 + b + c]!
      return i === j ? 1 : covariance(i, j) / Math.sqrt(covariance(i, i) * covariance(j, j))
    }),
  )
  return {
    method: { model: b > 0 ? 'arm-and-block' : 'arm', estimation: 'least-squares' },
    n,
    residualDf,
    residualSd,
    anova: [...blockRow, armRow, residualRow],
    blockAfterArm,
    armMeans,
    differences,
    residuals,
    differenceCorrelation,
  }
}

function fitOrRefuse(x: number[][], y: number[]): LeastSquaresFit {
  try {
    return leastSquares({ x, y })
  } catch (error) {
    if (error instanceof CalcError && error.facts.reason === 'rank-deficient') {
      throw new CalcError('not-possible', { field: 'rows', reason: 'arm-confounded-with-block' })
    }
    throw error
  }
}

function mustNameArms(arms: readonly string[], rows: readonly { arm: string }[]): void {
  const known = new Set(arms)
  if (known.size !== arms.length) throw new CalcError('duplicate', { field: 'arms' })
  if (arms.length < 2) throw new CalcError('not-possible', { field: 'arms', value: arms.length, reason: 'one-arm' })
  const seen = new Set(rows.map((row) => row.arm))
  for (const arm of arms)
    if (!seen.has(arm)) throw new CalcError('empty', { field: 'rows', value: arm, reason: 'arm-without-rows' })
  for (const arm of seen)
    if (!known.has(arm)) throw new CalcError('wrong-shape', { field: 'rows', value: arm, reason: 'unknown-arm' })
}

/** Distinct blocks in order of appearance; empty without blocks. A single block is no factor. */
function blocksOf(rows: readonly { block?: string }[]): string[] {
  const named = rows.filter((row) => row.block !== undefined)
  if (named.length > 0 && named.length < rows.length) {
    throw new CalcError('wrong-shape', {
      field: 'rows',
      value: named.length,
      min: rows.length,
      reason: 'block-on-some-rows',
    })
  }
  return [...new Set(named.map((row) => row.block!))]
}

function quadratic(l: readonly number[], matrix: readonly (readonly number[])[]): number {
  return l.reduce((sum, a, i) => sum + a * l.reduce((inner, b, j) => inner + b * matrix[i]![j]!, 0), 0)
}
