import { mustBeWithin } from '../checks'

/**
 * Deviance part x ln(x / m) + m − x, without loss of digits when x and m are close.
 * @param x 0 < x; @param m 0 < m
 * @returns ≥ 0
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Loader (2000), function bd0.
 */
export function deviance(q: { x: number; m: number }): number {
  const x = mustBeWithin('x', q.x, { over: 0 })
  const m = mustBeWithin('m', q.m, { over: 0 })
  const difference = x - m
  if (Math.abs(difference) >= 0.1 * (x + m)) return x * Math.log(x / m) - difference
  // ln(x/m) = 2 artanh(v); the leading terms cancel by hand
  const v = difference / (x + m)
  let sum = difference * v
  let term = 2 * x * v
  for (let j = 1; j < 60; j++) {
    term *= v * v
    const next = sum + term / (2 * j + 1)
    if (next === sum) break
    sum = next
  }
  return sum
}
