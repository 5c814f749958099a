import { CalcError } from '../error'
import { type RemlCriterion, remlCriterion } from './reml-criterion'
import { spdInverse } from './spd-inverse'
import type { CrossProducts } from './types'

/** Rough starts for each ratio; the best one leads. */
const STARTS = [0, 0.1, 1, 10]
const MOST_STEPS = 200
/** A step below this share of the ratio (or of a ratio that would matter) is the last. */
const SMALL_STEP = 1e-9
/** A Newton step that promises less than this is the last: a millionth of the standard error of a variance. */
const SMALL_FALL = 1e-12
/** Below it the criterion itself shows nothing but rounding. */
const ROUNDING = 1e-9
/** Beyond it the residual is rounding beside the factor. */
const LARGEST_RATIO = 1e12

export type RemlMinimum = {
  /** ≥ 0 in the order of cross.names, exactly 0 at the boundary. */
  ratios: number[]
  criterion: RemlCriterion
  /** False where rounding stops the way down: the fixed part has to be taken out of y again. */
  settled: boolean
}

/**
 * Variance ratios of the least REML criterion, by Newton steps with the analytic Hessian (the expected one where that is
 * not definite), halved until the criterion falls. A ratio stays at zero when the score there points below zero.
 * @param start ratios to begin at; the best of a few where not given
 * @throws CalcError 'not-possible' with reason 'zero-variance' (no residual variance beside a factor); 'no-convergence'
 * Source: Bertsekas (1982), SIAM J. Control Optim. 20, projected Newton method.
 */
export function minimiseReml(cross: CrossProducts, start: readonly number[] = bestStart(cross)): RemlMinimum {
  const scale = cross.largestLevels.map((count) => 0.01 / count)
  const end = (ratios: readonly number[], settled: boolean): RemlMinimum => {
    const rounded = ratios.map((ratio, k) => (ratio < SMALL_STEP * scale[k]! ? 0 : ratio))
    return { ratios: rounded, criterion: remlCriterion(cross, rounded), settled }
  }
  let ratios = start
  for (let step = 0; step < MOST_STEPS; step++) {
    const next = nextRatios(cross, ratios)
    if (next === null) return end(ratios, false)
    if (next.ratios.some((ratio) => !(ratio < LARGEST_RATIO)))
      throw new CalcError('not-possible', { field: 'rows', reason: 'zero-variance' })
    const small = next.ratios.every((ratio, k) => Math.abs(ratio - ratios[k]!) <= SMALL_STEP * (ratios[k]! + scale[k]!))
    ratios = next.ratios
    if (small || next.fall <= SMALL_FALL) return end(ratios, true)
  }
  throw new CalcError('no-convergence', { field: 'rows', value: MOST_STEPS })
}

function bestStart(cross: CrossProducts): number[] {
  const starts = cross.names.length === 1 ? STARTS.map((a) => [a]) : STARTS.flatMap((a) => STARTS.map((b) => [a, b]))
  const values = starts.map((start) => remlCriterion(cross, start).value)
  return starts[values.indexOf(Math.min(...values))]!
}

/** The next ratios, and twice the fall of the criterion that the step promised; null where nothing falls. */
function nextRatios(cross: CrossProducts, ratios: readonly number[]): { ratios: number[]; fall: number } | null {
  const here = remlCriterion(cross, ratios)
  const free = ratios.flatMap((ratio, k) => (ratio > 0 || here.gradient[k]! < 0 ? [k] : []))
  if (free.length === 0) return { ratios: [...ratios], fall: 0 }
  const diagonal = here.expected.map((row, i) => row.map((value, j) => (i === j ? value : 0)))
  for (const hessian of [here.hessian, here.expected, diagonal]) {
    const move = newtonMove(hessian, here.gradient, free)
    if (move === null) continue
    const fall = free.reduce((sum, k) => sum - move[k]! * here.gradient[k]!, 0)
    for (let share = 1; share > 1e-9; share /= 2) {
      const next = ratios.map((ratio, k) => Math.max(0, ratio + share * move[k]!))
      if (fall <= ROUNDING || remlCriterion(cross, next).value < here.value - 1e-4 * share * Math.min(fall, 1))
        return { ratios: next, fall }
    }
  }
  return null
}

/** −H⁻¹g over the free ratios, zero elsewhere; null where H is not definite there. */
function newtonMove(
  hessian: readonly (readonly number[])[],
  gradient: readonly number[],
  free: readonly number[],
): number[] | null {
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
