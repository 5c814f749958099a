import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { crossProducts } from './cross-products'
import { designMatrix } from './design-matrix'
import { type Estimate, type SmallSample, estimateContrast } from './estimate-contrast'
import { kenwardRogerCovariance } from './kenward-roger-covariance'
import { kenwardRogerTest } from './kenward-roger-test'
import { matrixProduct } from './matrix-product'
import { minimiseReml } from './minimise-reml'
import { mustBeEstimable } from './must-be-estimable'
import { mustBeIdentified } from './must-be-identified'
import { observedVarianceCovariance } from './observed-variance-covariance'
import { ordinaryResiduals } from './ordinary-residuals'
import { projectedMoments } from './projected-moments'
import { satterthwaiteTest } from './satterthwaite-test'
import { termContrasts } from './term-contrasts'
import type { Matrix, MixedModel, MixedRow } from './types'
import { weightedProducts } from './weighted-products'
import { withResidual } from './with-residual'

/** A spread at or below this share of the largest value is rounding, not variation. */
const ZERO_VARIANCE = 1e-14

export type JointTest = { df1: number; df2: number; f: number; p: number }

export type MixedFit = {
  method: { model: 'linear-mixed'; estimation: 'reml'; satterthwaite: 'observed-information'; kenwardRoger: 'expected-information' }
  n: number
  /** −2 log restricted likelihood, constants included. */
  remlCriterion: number
  residualVariance: number
  /** In the order of the model; exactly 0 at the boundary. */
  varianceComponents: { name: string; levels: number; variance: number }[]
  /** A variance is estimated at zero: no degrees of freedom are given, the verdict rests on batch means. */
  boundary: boolean
  /** Control at the first-appearing level of each fixed factor and covariate 0. */
  intercept: Estimate
  coefficients: (Estimate & { term: string; level: string | null; arm: string | null })[]
  armMeans: (Estimate & { arm: string })[]
  /** Arm minus control, averaged over the levels of a factor that interacts with the arm. */
  differences: (Estimate & { arm: string })[]
  /** Covariance of the differences: from the model, and adjusted after Kenward and Roger (null at the boundary). */
  differenceCovariance: { model: Matrix; kenwardRoger: Matrix | null }
  tests: { term: string; df1: number; satterthwaite: JointTest | null; kenwardRoger: JointTest | null }[]
  warnings: ('variance-at-zero-use-batch-means' | 'kenward-roger-undefined')[]
}

/**
 * Linear mixed model y ~ fixed factors + covariates + arm (+ arm × one factor) + one or two random intercepts, by REML
 * with Satterthwaite's and Kenward and Roger's degrees of freedom; balanced or not, at a cost of levels and not of rows.
 * @param rows one per reading, more than fixed effects, y within ±1e100 in the measure's own unit
 * @param model see MixedModel; the control is the first of its arms
 * @throws CalcError as designMatrix, mustBeEstimable, mustBeIdentified (what is confounded is named before anything is
 * fitted), crossProducts and minimiseReml; 'not-possible' with reason 'zero-variance' (no variation beyond 1e-14 of the
 * largest value, or none within the levels of a random factor)
 * Source: Patterson & Thompson (1971), Biometrika 58; Bates et al. (2015), J. Stat. Softw. 67(1); Giesbrecht & Burns
 * (1985), Biometrics 41; Kenward & Roger (1997), Biometrics 53.
 */
export function fitMixedModel(q: { rows: readonly MixedRow[]; model: MixedModel }): MixedFit {
  const y = q.rows.map((row, i) => mustBeWithin(`rows[${i}].y`, row.y, { min: -1e100, max: 1e100 }))
  const design = designMatrix(q)
  mustBeEstimable(design)
  const { residuals, coefficients: ordinary } = ordinaryResiduals({ x: design.x, y: y.map((value) => value - y[0]!) })
  const unit = spreadOf(residuals, y)
  const cross = crossProducts({
    u: design.x.map((row, i) => [...row, residuals[i]! / unit]),
    random: q.model.random.map((name) => ({ name, levels: q.rows.map((row) => row.factors[name]!) })),
  })
  mustBeIdentified(cross, design)
  const { ratios, criterion } = minimiseReml(cross)

  const products = withResidual(weightedProducts(cross, ratios), ratios, cross.n)
  const moments = projectedMoments(products)
  const df = cross.n - cross.p
  const scaledVariance = moments.residual / df
  const residualVariance = scaledVariance * unit * unit
  const coefficients = moments.coefficients.map((value, j) => value * unit + ordinary[j]! + (j === 0 ? y[0]! : 0))
  const covariance = moments.inverse
  const boundary = ratios.includes(0)
  const smallSample: SmallSample | null = boundary
    ? null
    : {
        kenwardRoger: kenwardRogerCovariance(products, moments),
        first: products.first.map((matrix) => matrix.slice(0, cross.p).map((row) => row.slice(0, cross.p))),
        observed: observedVarianceCovariance(moments, scaledVariance),
      }
  const common = { coefficients, covariance, residualVariance }
  const estimate = (weights: readonly number[]) => estimateContrast({ ...common, weights, smallSample })
  const contrasts = termContrasts(design, q.model.byArm)
  const ofDifferences = (from: Matrix): number[][] => {
    const weights = contrasts.differences.map((difference) => difference.weights)
    if (weights.length === 0) return []
    return matrixProduct(weights, from, covariance.map((_, j) => weights.map((row) => row[j]! * residualVariance)))
  }
  const tests = contrasts.terms.map(({ term, weights }) => ({
    term,
    df1: weights.length,
    satterthwaite: smallSample && satterthwaiteTest({ ...common, weights, first: smallSample.first, varianceCovariance: smallSample.observed }),
    kenwardRoger: smallSample && kenwardRogerTest({ ...common, weights, kenwardRoger: smallSample.kenwardRoger }),
  }))
  const differences = contrasts.differences.map(({ arm, weights }) => ({ arm, ...estimate(weights) }))
  const undefinedSomewhere = [...tests, ...differences].some(({ kenwardRoger }) => kenwardRoger === null)
  return {
    method: { model: 'linear-mixed', estimation: 'reml', satterthwaite: 'observed-information', kenwardRoger: 'expected-information' },
    n: cross.n,
    remlCriterion: criterion.value + 2 * df * Math.log(unit),
    residualVariance,
    varianceComponents: q.model.random.map((name) => {
      const k = cross.names.indexOf(name)
      return { name, levels: cross.levelCounts[k]!, variance: ratios[k]! * residualVariance }
    }),
    boundary,
    intercept: estimate(contrasts.intercept),
    coefficients: design.columns.slice(1).map((column, j) => ({ ...column, ...estimate(covariance.map((_, m) => (m === j + 1 ? 1 : 0))) })),
    armMeans: contrasts.armMeans.map(({ arm, weights }) => ({ arm, ...estimate(weights) })),
    differences,
    differenceCovariance: { model: ofDifferences(covariance), kenwardRoger: smallSample && ofDifferences(smallSample.kenwardRoger.adjusted) },
    tests,
    warnings: boundary ? ['variance-at-zero-use-batch-means'] : undefinedSomewhere ? ['kenward-roger-undefined'] : [],
  }
}

/** Root mean square of what the fixed part leaves over. */
function spreadOf(residuals: readonly number[], y: readonly number[]): number {
  const largest = y.reduce((most, value) => Math.max(most, Math.abs(value)), 0)
  const spread = Math.sqrt(residuals.reduce((sum, value) => sum + value * value, 0) / residuals.length)
  if (spread <= Math.max(ZERO_VARIANCE * largest, 1e-100)) throw new CalcError('not-possible', { field: 'rows', value: spread, reason: 'zero-variance' })
  return spread
}
