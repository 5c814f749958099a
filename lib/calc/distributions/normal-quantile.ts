import { mustBeWithin } from '../checks'
import type { Tail } from './normal-tail'

// M. J. Wichura (1988), algorithm AS 241, Applied Statistics 37, routine PPND16. Regions |p − 0.5| ≤ 0.425,
// √(−ln p) ≤ 5, above.
const A = [
  3.387132872796366608, 133.14166789178437745, 1971.5909503065514427, 13731.693765509461125, 45921.953931549871457,
  67265.770927008700853, 33430.575583588128105, 2509.0809287301226727,
] as const
const B = [
  1, 42.313330701600911252, 687.1870074920579083, 5394.1960214247511077, 21213.794301586595867, 39307.89580009271061,
  28729.085735721942674, 5226.495278852854561,
] as const
const C = [
  1.42343711074968357734, 4.6303378461565452959, 5.7694972214606914055, 3.64784832476320460504, 1.27045825245236838258,
  0.24178072517745061177, 0.0227238449892691845833, 7.7454501427834140764e-4,
] as const
const D = [
  1, 2.05319162663775882187, 1.6763848301838038494, 0.68976733498510000455, 0.14810397642748007459,
  0.0151986665636164571966, 5.475938084995344946e-4, 1.05075007164441684324e-9,
] as const
const E = [
  6.6579046435011037772, 5.4637849111641143699, 1.7848265399172913358, 0.29656057182850489123, 0.026532189526576123093,
  0.0012426609473880784386, 2.71155556874348757815e-5, 2.01033439929228813265e-7,
] as const
const F = [
  1, 0.59983220655588793769, 0.13692988092273580531, 0.0148753612908506148525, 7.868691311456132591e-4,
  1.8463183175100546818e-5, 1.4215117583164458887e-7, 2.04426310338993978564e-15,
] as const

/**
 * The z whose tail probability is p.
 * @param p 0 < p < 1
 * @returns about 1e-15 relative for p down to 1e-300, 1e-15 absolute near p = 0.5
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Wichura (1988), AS 241.
 * @example normalQuantile({ p: 0.025, tail: 'upper' }) // 1.959963984540054
 */
export function normalQuantile(q: { p: number; tail: Tail }): number {
  const p = mustBeWithin('p', q.p, { over: 0, under: 1 })
  const sign = q.tail === 'lower' ? 1 : -1
  const off = p - 0.5
  if (Math.abs(off) <= 0.425) {
    const r = 0.180625 - off * off
    return (sign * off * polynomial(A, r)) / polynomial(B, r) || 0
  }
  const r = Math.sqrt(-Math.log(off < 0 ? p : 1 - p))
  const size = r <= 5 ? polynomial(C, r - 1.6) / polynomial(D, r - 1.6) : polynomial(E, r - 5) / polynomial(F, r - 5)
  return off < 0 ? -sign * size : sign * size
}

function polynomial(coefficients: readonly number[], x: number): number {
  let sum = 0
  for (let i = coefficients.length - 1; i >= 0; i--) sum = sum * x + coefficients[i]!
  return sum
}
