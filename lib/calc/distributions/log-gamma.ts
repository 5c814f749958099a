import { mustBeWithin } from '../checks'

const HALF_LN_2PI = 0.9189385332046727
/** B₂ₖ / (2k (2k − 1)), DLMF 5.11.1 */
const COEFFICIENTS = [1 / 12, -1 / 360, 1 / 1260, -1 / 1680, 1 / 1188, -691 / 360360, 1 / 156]

/**
 * ln Γ(x).
 * @param x 0 < x ≤ 1e15
 * @returns about 1e-15 relative for x > 3, 1e-14 absolute below (it passes through 0 at 1 and 2)
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Stirling's series, DLMF 5.11.1, at x ≥ 15; below by Γ(x) = Γ(x + n) / (x … (x + n − 1)), DLMF 5.5.1.
 * @example logGamma(0.5) // ½ ln π
 */
export function logGamma(x: number): number {
  mustBeWithin('x', x, { over: 0, max: 1e15 })
  let product = 1
  let far = x
  while (far < 15) {
    product *= far
    far += 1
  }
  return (far - 0.5) * Math.log(far) - far + HALF_LN_2PI + stirlingSeries(far) - Math.log(product)
}

/** What Stirling's formula leaves out of ln Γ, x ≥ 15: seven terms, the next below 1e-18. */
export function stirlingSeries(x: number): number {
  const square = x * x
  return COEFFICIENTS.reduceRight((sum, c) => sum / square + c, 0) / x
}
