import { mustBeWithin, mustHaveAtLeast, mustVary } from '../checks'
import { tQuantile } from '../distributions/t-quantile'
import { tTail } from '../distributions/t-tail'

export type GrubbsTest = {
  method: 'grubbs-two-sided'
  g: number
  index: number
  value: number
  critical: number
  p: number
  outlier: boolean
}

/**
 * Grubbs' two-sided test for one outlier: the value farthest from the mean, in sample standard deviations (n − 1).
 * It flags; what to do about a flagged value is a person's decision.
 * @param values 3 or more, not all equal (SD above 1e-14 of the largest); @param alpha 0.0001 to 0.5
 * @returns index from 0; p by Bonferroni over the n values, at most 1
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range'; 'not-possible' with reason 'zero-variance'
 * Source: Grubbs (1969), Technometrics 11; NIST/SEMATECH e-Handbook, section 1.3.5.17.1.
 */
export function grubbsTest(q: { values: readonly number[]; alpha: number }): GrubbsTest {
  const n = mustHaveAtLeast('values', q.values, 3).length
  const critical = grubbsCritical({ count: n, alpha: q.alpha })
  q.values.forEach((value, i) => mustBeWithin(`values[${i}]`, value))
  const first = q.values[0]!
  const mean = first + q.values.reduce((sum, value) => sum + (value - first), 0) / n
  const sd = Math.sqrt(q.values.reduce((sum, value) => sum + (value - mean) ** 2, 0) / (n - 1))
  mustVary('values', sd, Math.max(...q.values.map(Math.abs)))
  const distances = q.values.map((value) => Math.abs(value - mean) / sd)
  const g = Math.max(...distances)
  const index = distances.indexOf(g)
  // G has a largest possible value (n − 1)/√n, where t is infinite
  const room = (n - 1) ** 2 / n - g * g
  const t = room > 0 ? Math.sqrt(((n - 2) * g * g) / room) : Infinity
  const p = t === Infinity ? 0 : Math.min(1, 2 * n * tTail({ t, df: n - 2, tail: 'upper' }))
  return { method: 'grubbs-two-sided', g, index, value: q.values[index]!, critical, p, outlier: g > critical }
}

/** Critical value of G for n values at two-sided level alpha. @throws CalcError 'out-of-range' */
export function grubbsCritical(q: { count: number; alpha: number }): number {
  const n = mustBeWithin('count', q.count, { min: 3, max: 1e6 })
  const alpha = mustBeWithin('alpha', q.alpha, { min: 0.0001, max: 0.5 })
  const t = tQuantile({ p: alpha / (2 * n), df: n - 2, tail: 'upper' })
  return ((n - 1) / Math.sqrt(n)) * Math.sqrt((t * t) / (n - 2 + t * t))
}
