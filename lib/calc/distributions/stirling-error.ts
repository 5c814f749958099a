import { mustBeWithin } from '../checks'
import { logGamma, stirlingSeries } from './log-gamma'

const HALF_LN_2PI = 0.9189385332046727

/**
 * What Stirling's formula leaves out: δ(x) = ln Γ(x + 1) − [½ ln(2πx) + x ln x − x].
 * @param x 0 < x ≤ 1e15
 * @returns full relative accuracy for x ≥ 15, 1e-14 absolute below
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Loader (2000), "Fast and accurate computation of binomial probabilities"; series DLMF 5.11.1.
 */
export function stirlingError(x: number): number {
  mustBeWithin('x', x, { over: 0, max: 1e15 })
  if (x < 15) return logGamma(x) - (x - 0.5) * Math.log(x) + x - HALF_LN_2PI
  return stirlingSeries(x)
}
