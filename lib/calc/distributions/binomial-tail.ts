import { mustBeWhole, mustBeWithin } from '../checks'
import type { Tail } from './normal-tail'
import { regularisedBeta } from './regularised-beta'

/**
 * Binomial: `lower` P(X ≤ k), `upper` P(X ≥ k), each computed as such; both hold k itself.
 * @param k whole, 0 to n; @param n whole, 1 to 1e6; @param share chance of success, 0 < share < 1
 * @returns 0 to 1, about 1e-12 relative
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: P(X ≥ k) = I_p(k, n − k + 1), Abramowitz & Stegun 26.5.24.
 * @example binomialTail({ k: 8, n: 12, share: 1 / 3, tail: 'upper' }) // 0.018758
 */
export function binomialTail(q: { k: number; n: number; share: number; tail: Tail }): number {
  const n = mustBeWhole('n', q.n, { min: 1, max: 1e6 })
  const k = mustBeWhole('k', q.k, { min: 0, max: n })
  const share = mustBeWithin('share', q.share, { over: 0, under: 1 })
  if (q.tail === 'upper') return k === 0 ? 1 : regularisedBeta({ x: share, y: 1 - share, a: k, b: n - k + 1 }).lower
  return k === n ? 1 : regularisedBeta({ x: share, y: 1 - share, a: k + 1, b: n - k }).upper
}
