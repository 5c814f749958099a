import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import type { Sides } from './dunnett-tail'
import { LATTICE_SIZES, multivariateTLattice } from './multivariate-t-lattice'

/** Points are doubled until the error estimate is below this. */
const LARGEST_ERROR = 1e-4

export type MultivariateTTail = {
  lower: number
  upper: number
  /** Half width of the 99 % interval of both, from shifted copies of the lattice; below 1e-4. */
  errorEstimate: number
  method: 'shifted-richtmyer-lattice'
}

/**
 * Multivariate t of any correlation: `two` P(max |Tᵢ| ≤ c), `one` P(max Tᵢ ≤ c), and the complement, by a lattice rule
 * without chance: the same input always gives the same number.
 * @param c finite, ≥ 0 for `two`; @param df 0.5 ≤ df ≤ 1e6
 * @param correlation k × k, positive definite, 1 on the diagonal, 2 ≤ k ≤ 12
 * @returns both sides and their error estimate, absolute; the upper one never above the sum of the single tails
 * @throws CalcError 'not-finite' | 'out-of-range' | 'empty' | 'wrong-shape'; 'not-possible' with reason 'not-definite';
 *   'no-convergence' where the most points leave an error estimate above 1e-4
 * Source: see multivariateTLattice.
 * @example multivariateTTail({ c: 2.5, df: 9, correlation: [[1, 0.5], [0.5, 1]], sides: 'two' }).upper // 0.0600
 */
export function multivariateTTail(q: {
  c: number
  df: number
  correlation: readonly (readonly number[])[]
  sides: Sides
}): MultivariateTTail {
  const c = mustBeWithin('c', q.c, q.sides === 'two' ? { min: 0 } : {})
  const { upper, errorEstimate } = sumToWantedError(multivariateTLattice(q), c)
  return { lower: 1 - upper, upper, errorEstimate, method: 'shifted-richtmyer-lattice' }
}

/** The sum at a limit with as many points as its error asks for. @throws CalcError 'no-convergence' */
export function sumToWantedError(
  lattice: ReturnType<typeof multivariateTLattice>,
  c: number,
): { upper: number; errorEstimate: number; points: number } {
  let errorEstimate = Infinity
  for (const points of LATTICE_SIZES) {
    const sum = lattice(c, points)
    errorEstimate = sum.errorEstimate
    if (errorEstimate < LARGEST_ERROR) return { ...sum, points }
  }
  throw new CalcError('no-convergence', { field: 'correlation', value: errorEstimate, max: LARGEST_ERROR })
}
