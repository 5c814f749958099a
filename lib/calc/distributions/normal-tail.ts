import { mustBeWithin } from '../checks'

/** Which side of a distribution a probability is on: `lower` P(X ≤ x), `upper` P(X > x). */
export type Tail = 'lower' | 'upper'

const SQRT_32 = 5.656854249492381
const ONE_BY_SQRT_2PI = 0.3989422804014327

// W. J. Cody (1969), "Rational Chebyshev approximations for the error function", Math. Comp. 23; the form for the
// normal distribution, algorithm 715 (Cody 1993), ACM TOMS 19. Regions |z| ≤ 0.66291, ≤ √32, above.
const A = [
  2.2352520354606839287, 161.02823106855587881, 1067.6894854603709582, 18154.981253343561249, 0.065682337918207449113,
] as const
const B = [47.20258190468824187, 976.09855173777669322, 10260.932208618978205, 45507.789335026729956] as const
const C = [
  0.39894151208813466764, 8.8831497943883759412, 93.506656132177855979, 597.27027639480026226, 2494.5375852903726711,
  6848.1904505362823326, 11602.651437647350124, 9842.7148383839780218, 1.0765576773720192317e-8,
] as const
const D = [
  22.266688044328115691, 235.38790178262499861, 1519.377599407554805, 6485.558298266760755, 18615.571640885098091,
  34900.952721145977266, 38912.003286093271411, 19685.429676859990727,
] as const
const P = [
  0.21589853405795699, 0.1274011611602473639, 0.022235277870649807, 0.001421619193227893466, 2.9112874951168792e-5,
  0.02307344176494017303,
] as const
const Q = [
  1.28426009614491121, 0.468238212480865118, 0.0659881378689285515, 0.00378239633202758244, 7.29751555083966205e-5,
] as const

/**
 * Standard normal probability of one tail, each computed as such.
 * @param z finite
 * @returns 0 to 1; about 1e-15 relative, 1e-14 beyond |z| = 20; 0 below the smallest double (z about 38)
 * @throws CalcError 'not-finite'
 * Source: Cody (1969, 1993).
 * @example normalTail({ z: 1.959963984540054, tail: 'upper' }) // 0.025
 */
export function normalTail(q: { z: number; tail: Tail }): number {
  mustBeWithin('z', q.z)
  return q.tail === 'lower' ? normalUpper(-q.z) : normalUpper(q.z)
}

/** P(Z > z) without guards, for the inside of an integral. */
export function normalUpper(z: number): number {
  const y = Math.abs(z)
  if (y <= 0.66291) {
    const square = y * y
    let top = A[4] * square
    let bottom = square
    for (let i = 0; i < 3; i++) {
      top = (top + A[i]!) * square
      bottom = (bottom + B[i]!) * square
    }
    return 0.5 - (z * (top + A[3])) / (bottom + B[3])
  }
  const far = y > 38.6 ? 0 : y <= SQRT_32 ? middle(y) : outer(y)
  return z > 0 ? far : 1 - far
}

function middle(y: number): number {
  let top = C[8] * y
  let bottom = y
  for (let i = 0; i < 7; i++) {
    top = (top + C[i]!) * y
    bottom = (bottom + D[i]!) * y
  }
  return (gauss(y) * (top + C[7])) / (bottom + D[7])
}

function outer(y: number): number {
  const inverse = 1 / (y * y)
  let top = P[5] * inverse
  let bottom = inverse
  for (let i = 0; i < 4; i++) {
    top = (top + P[i]!) * inverse
    bottom = (bottom + Q[i]!) * inverse
  }
  return (gauss(y) * (ONE_BY_SQRT_2PI - (inverse * (top + P[4])) / (bottom + Q[4]))) / y
}

/** exp(−y²/2) with y split in sixteenths, so that the square loses no digits. */
function gauss(y: number): number {
  const coarse = Math.trunc(y * 16) / 16
  return Math.exp(-coarse * coarse * 0.5) * Math.exp(-(y - coarse) * (y + coarse) * 0.5)
}
