import { mustBeWithin } from '../checks'

const STEP = 1 / 32
const REACH = 3.3

/**
 * Owen's function T(h, a) = 1/(2π) ∫₀ᵃ exp(−h²(1 + x²)/2) / (1 + x²) dx.
 * The integral is summed by the double exponential rule, whose error falls exponentially; no random numbers.
 * @param h −40 ≤ h ≤ 40; @param a 0 ≤ a ≤ 10
 * @returns about 1e-14 relative
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Owen (1956), Annals of Mathematical Statistics 27; rule: Takahasi & Mori (1974), Publ. RIMS 9.
 * @example owensT({ h: 0, a: 1 }) // 1/8
 */
export function owensT(q: { h: number; a: number }): number {
  const h = mustBeWithin('h', q.h, { min: -40, max: 40 })
  const a = mustBeWithin('a', q.a, { min: 0, max: 10 })
  let sum = 0
  for (let node = Math.round(-REACH / STEP); node * STEP <= REACH; node++) {
    const u = (Math.PI / 2) * Math.sinh(node * STEP)
    // a / (1 + e^(−2u)) is the place on 0 to a, without losing digits at either end
    const x = a / (1 + Math.exp(-2 * u))
    const weight = (a * Math.PI * Math.cosh(node * STEP)) / (4 * Math.cosh(u) ** 2)
    sum += (weight * Math.exp(-0.5 * h * h * x * x)) / (1 + x * x)
  }
  return (STEP * sum * Math.exp(-0.5 * h * h)) / (2 * Math.PI)
}
