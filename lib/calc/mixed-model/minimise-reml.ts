import { CalcError } from '../error'
import { type RemlCriterion, remlCriterion } from './reml-criterion'
import { spdInverse } from './spd-inverse'
import type { CrossProducts } from './types'

/** Rough starts for each ratio; the best one leads. */
const STARTS = [0, 0.1, 1, 10]
const MOST_STEPS = 200
/** A step below this share of the ratio (or of a ratio that would matter) is the last. */
const SMALL_STEP = 1e-9
/** Beyond it the residual is rounding beside the factor. */
const LARGEST_RATIO = 1e12

/**
 * Variance ratios of the least REML criterion, by Newton steps with the analytic Hessian (the expected one where that is
 * not definite), halved until the criterion falls. A ratio stays at zero when the score there points below zero.
 * @returns ratios ≥ 0 in the order of cross.names, exactly 0 at the boundary, and the criterion there
 * @throws CalcError 'not-possible' with reason 'zero-variance' (no residual variance beside a factor); 'no-convergence'
 * Source: Bertsekas (1982), SIAM J. Control Optim. 20, projected Newton method.
 */
export function minimiseReml(cross: CrossProducts): { ratios: number[]; criterion: RemlCriterion } {
  const scale = cross.largestLevels.map((count) => 0.01 / count)
  let ratios = bestStart(cross)
  for (let step = 0; step < MOST_STEPS; step++) {
    const here = remlCriterion(cross, ratios)
    const next = nextRatios(cross, ratios, here)
    if (next.some((ratio) => !(ratio < LARGEST_RATIO))) throw new CalcError('not-possible', { field: 'rows', reason: 'zero-variance' })
    const done = next.every((ratio, k) => Math.abs(ratio - ratios[k]!) <= SMALL_STEP * (ratios[k]! + scale[k]!))
    ratios = next
    if (done) {
      const settled = ratios.map((ratio, k) => (ratio < SMALL_STEP * scale[k]! ? 0 : ratio))
      return { ratios: settled, criterion: remlCriterion(cross, settled) }
    }
  }
  throw new CalcError('no-convergence', { field: 'rows', value: MOST_STEPS })
}

function bestStart(cross: CrossProducts): number[] {
  const starts = cross.names.length === 1 ? STARTS.map((a) => [a]) : STARTS.flatMap((a) => STARTS.map((b) => [a, b]))
  const values = starts.map((start) => remlCriterion(cross, start).value)
  return starts[values.indexOf(Math.min(...values))]!
}

function nextRatios(cross: CrossProducts, ratios: readonly number[], here: RemlCriterion): number[] {
  const free = ratios.flatMap((ratio, k) => (ratio > 0 || here.gradient[k]! < 0 ? [k] : []))
  if (free.length === 0) return [...ratios]
  const diagonal = here.expected.map((row, i) => row.map((value, j) => (i === j ? value : 0)))
  for (const hessian of [here.hessian, here.expected, diagonal]) {
    const move = newtonMove(hessian, here.gradient, free)
    if (move === null) continue
    const fall = free.reduce((sum, k) => sum - move[k]! * here.gradient[k]!, 0)
    for (let share = 1; share > 1e-9; share /= 2) {
      const next = ratios.map((ratio, k) => Math.max(0, ratio + share * move[k]!))
      // so close to the end the criterion itself is only rounding
      if (fall <= 1e-9 || remlCriterion(cross, next).value < here.value - 1e-4 * share * Math.min(fall, 1)) return next
    }
  }
  throw new CalcError('no-convergence', { field: 'rows', value: here.value })
}

/** −H⁻¹g over the free ratios, zero elsewhere; null where H is not definite there. */
function newtonMove(hessian: readonly (readonly number[])[], gradient: readonly number[], free: readonly number[]): number[] | null {
  const part = free.map((k) => free.map((l) => hessian[k]![l]!))
  if (part.some((row, i) => !(row[i]! > 0))) return null
  try {
    const { inverse } = spdInverse(part)
    const move = gradient.map(() => 0)
    free.forEach((k, i) => (move[k] = -free.reduce((sum, l, j) => sum + inverse[i]![j]! * gradient[l]!, 0)))
    return move
  } catch (error) {
    if (error instanceof CalcError && error.facts.reason === 'not-definite') return null
    throw error
  }
}
