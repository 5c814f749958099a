import { mustBeWithin } from '../checks'
import { designMatrix } from './design-matrix'
import { type Estimate, type SmallSample, estimateContrast } from './estimate-contrast'
import { isNested } from './is-nested'
import { kenwardRogerCovariance } from './kenward-roger-covariance'
import { kenwardRogerTest } from './kenward-roger-test'
import { matrixProduct } from './matrix-product'
import { mustBeEstimable } from './must-be-estimable'
import { observedVarianceCovariance } from './observed-variance-covariance'
import { ordinaryResiduals } from './ordinary-residuals'
import { projectedMoments } from './projected-moments'
import { refuseIndefinite } from './refuse-indefinite'
import { satterthwaiteTest } from './satterthwaite-test'
import { settleVariances } from './settle-variances'
import { termContrasts } from './term-contrasts'
import { testAgainstResidual } from './test-against-residual'
import type { Design, Matrix, MixedModel, MixedRow } from './types'
import { weightedProducts } from './weighted-products'
import { withResidual } from './with-residual'

export type JointTest = { df1: number; df2: number; f: number; p: number }

export type MixedFit = {
  method: {
    model: 'linear-mixed'
    estimation: 'reml'
    satterthwaite: 'observed-information'
    kenwardRoger: 'expected-information'
  }
  n: number
  /** −2 log restricted likelihood, constants included. */
  remlCriterion: number
  residualVariance: number
  /**
   * In the order of the model; exactly 0 at the boundary. `test` is against the pieces; null for a factor that another
   * random one is nested in or crossed with, which has no exact test against them.
   */
  varianceComponents: { name: string; levels: number; variance: number; test: JointTest | null }[]
  /** A variance is estimated at zero. */
  boundary: boolean
  /** Names of the random factors whose variance is at zero. */
  atZero: string[]
  /** Levels of each fixed factor in the order of its columns, the first of which the intercept stands for. */
  levelOrder: Readonly<Record<string, readonly string[]>>
  /** Control at the first level of each fixed factor and covariate 0. */
  intercept: Estimate
  coefficients: (Estimate & { term: string; level: string | null; arm: string | null })[]
  armMeans: (Estimate & { arm: string })[]
  /** Arm minus control, averaged over the levels of a factor that interacts with the arm. */
  differences: (Estimate & { arm: string })[]
  /** Covariance of the differences: from the model, and adjusted after Kenward and Roger (null at the boundary). */
  differenceCovariance: { model: Matrix; kenwardRoger: Matrix | null }
  tests: { term: string; df1: number; satterthwaite: JointTest | null; kenwardRoger: JointTest | null }[]
  warnings: ('variance-at-zero-use-batch-means' | 'variance-at-zero-left-out' | 'kenward-roger-undefined')[]
}

/**
 * Linear mixed model y ~ fixed factors + covariates + arm (+ arm × one factor) + one or two random intercepts, by REML
 * with Satterthwaite's and Kenward and Roger's degrees of freedom; balanced or not, at a cost of levels and not of rows.
 * A variance at zero is left out, which changes no estimate, and the rest is tested where a random factor that is nested
 * in it stays; where none does, no degrees of freedom are given, because they would be borrowed from pieces.
 * @param rows one per reading, more than fixed effects, y within ±1e100 in the measure's own unit
 * @param model see MixedModel; the control is the first of its arms
 * @throws CalcError as designMatrix, mustBeEstimable, mustBeIdentified (what is confounded is named before anything is
 * fitted) and settleVariances; 'not-possible' with reason 'zero-variance' (no variation beyond 1e-14 of the largest
 * value, or none within the levels of a random factor) or 'flat-likelihood' (too few levels to settle the variances)
 * Source: Patterson & Thompson (1971), Biometrika 58; Bates et al. (2015), J. Stat. Softw. 67(1); Giesbrecht & Burns
 * (1985), Biometrics 41; Kenward & Roger (1997), Biometrics 53.
 */
export function fitMixedModel(q: { rows: readonly MixedRow[]; model: MixedModel }): MixedFit {
  const y = q.rows.map((row, i) => mustBeWithin(`rows[${i}].y`, row.y, { min: -1e100, max: 1e100 }))
  const design = designMatrix(q)
  mustBeEstimable(design)
  const random = q.model.random.map((name) => ({ name, levels: q.rows.map((row) => row.factors[name]!) }))
  const { cross, ratios, remlValue, coefficients: taken, unit } = settleVariances({ design, y, random })

  const atZero = q.model.random.filter((name) => ratios[cross.names.indexOf(name)] === 0)
  const varianceTests = testVariances(random, { x: design.x, y })
  const stays = random.filter(({ name }) => !atZero.includes(name))
  const isLeftOut = random.every(
    ({ name, levels }) => !atZero.includes(name) || stays.some((own) => isNested(own.levels, levels)),
  )
  if (atZero.length > 0 && isLeftOut) {
    const rest = fitMixedModel({ rows: q.rows, model: { ...q.model, random: stays.map(({ name }) => name) } })
    const ofRest = (name: string) => rest.varianceComponents.find((own) => own.name === name)?.variance ?? 0
    return {
      ...rest,
      varianceComponents: random.map(({ name }, i) => ({
        name,
        levels: cross.levelCounts[cross.names.indexOf(name)]!,
        variance: ofRest(name),
        test: varianceTests[i]!,
      })),
      boundary: true,
      atZero: [...atZero, ...rest.atZero],
      warnings: ['variance-at-zero-left-out', ...rest.warnings],
    }
  }

  const last = withResidual(weightedProducts(cross, ratios), ratios, cross.n)
  const moments = projectedMoments(last)
  const df = cross.n - cross.p
  const scaledVariance = moments.residual / df
  const residualVariance = scaledVariance * unit * unit
  const coefficients = moments.coefficients.map((value, j) => taken[j]! + unit * value)
  const covariance = moments.inverse
  const boundary = atZero.length > 0
  const smallSample: SmallSample | null = boundary
    ? null
    : refuseIndefinite('flat-likelihood', () => ({
        kenwardRoger: kenwardRogerCovariance(last, moments),
        first: last.first.map((matrix) => matrix.slice(0, cross.p).map((row) => row.slice(0, cross.p))),
        observed: observedVarianceCovariance(moments, scaledVariance),
      }))
  const common = { coefficients, covariance, residualVariance }
  const estimate = (weights: readonly number[]) => estimateContrast({ ...common, weights, smallSample })
  const contrasts = termContrasts(design, q.model.byArm)
  const ofDifferences = (from: Matrix): number[][] => {
    const weights = contrasts.differences.map((difference) => difference.weights)
    if (weights.length === 0) return []
    return matrixProduct(
      weights,
      from,
      covariance.map((_, j) => weights.map((row) => row[j]! * residualVariance)),
    )
  }
  const tests = contrasts.terms.map(({ term, weights }) => ({
    term,
    df1: weights.length,
    satterthwaite:
      smallSample &&
      satterthwaiteTest({ ...common, weights, first: smallSample.first, varianceCovariance: smallSample.observed }),
    kenwardRoger: smallSample && kenwardRogerTest({ ...common, weights, kenwardRoger: smallSample.kenwardRoger }),
  }))
  const differences = contrasts.differences.map(({ arm, weights }) => ({ arm, ...estimate(weights) }))
  const undefinedSomewhere = [...tests, ...differences].some(({ kenwardRoger }) => kenwardRoger === null)
  return {
    method: {
      model: 'linear-mixed',
      estimation: 'reml',
      satterthwaite: 'observed-information',
      kenwardRoger: 'expected-information',
    },
    n: cross.n,
    remlCriterion: remlValue + 2 * df * Math.log(unit),
    residualVariance,
    varianceComponents: q.model.random.map((name, i) => {
      const k = cross.names.indexOf(name)
      return { name, levels: cross.levelCounts[k]!, variance: ratios[k]! * residualVariance, test: varianceTests[i]! }
    }),
    boundary,
    atZero,
    levelOrder: Object.fromEntries((q.model.fixed ?? []).map((name) => [name, design.levels[name]!])),
    intercept: estimate(contrasts.intercept),
    coefficients: design.columns
      .slice(1)
      .map((column, j) => ({ ...column, ...estimate(covariance.map((_, m) => (m === j + 1 ? 1 : 0))) })),
    armMeans: contrasts.armMeans.map(({ arm, weights }) => ({ arm, ...estimate(weights) })),
    differences,
    differenceCovariance: {
      model: ofDifferences(covariance),
      kenwardRoger: smallSample && ofDifferences(smallSample.kenwardRoger.adjusted),
    },
    tests,
    warnings: boundary ? ['variance-at-zero-use-batch-means'] : undefinedSomewhere ? ['kenward-roger-undefined'] : [],
  }
}

/** The exact test of each random factor against the pieces: of one alone, or of the one nested in the other. */
function testVariances(
  random: readonly { name: string; levels: readonly string[] }[],
  { x, y }: { x: Design['x']; y: readonly number[] },
): (JointTest | null)[] {
  const { residuals } = ordinaryResiduals({ x, y: y.map((value) => value - y[0]!) })
  return random.map(({ levels }, i) => {
    const other = random[1 - i]
    if (other && !isNested(levels, other.levels)) return null
    return testAgainstResidual({ x, y: residuals, levels, ...(other ? { within: other.levels } : {}) })
  })
}
