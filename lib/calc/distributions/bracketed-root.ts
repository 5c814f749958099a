import { mustBeWithin } from '../checks'
import { CalcError } from '../error'

const MOST_STEPS = 200

/**
 * A root of a continuous function between two points where its signs differ.
 * @param low, high the two points; @param tolerance absolute, > 0; 4e-16 relative is added
 * @throws CalcError 'not-finite' | 'not-possible' (same sign at both ends) | 'no-convergence'
 * Source: Chandrupatla (1997), Advances in Engineering Software 28: inverse quadratic steps, bisection where they fail.
 */
export function bracketedRoot(q: { f: (x: number) => number; low: number; high: number; tolerance: number }): number {
  mustBeWithin('tolerance', q.tolerance, { over: 0 })
  let [a, b] = [mustBeWithin('low', q.low), mustBeWithin('high', q.high)]
  let [fa, fb] = [q.f(a), q.f(b)]
  if (fa === 0) return a
  if (fb === 0) return b
  if (fa > 0 === fb > 0) throw new CalcError('not-possible', { field: 'low', value: a, reason: 'no-sign-change' })
  let share = 0.5
  for (let step = 0; step < MOST_STEPS; step++) {
    const x = a + share * (b - a)
    const fx = mustBeWithin('f', q.f(x))
    let [c, fc] = [a, fa]
    if (fx > 0 !== fa > 0) {
      ;[c, fc, b, fb] = [b, fb, a, fa]
    }
    ;[a, fa] = [x, fx]
    const best = Math.abs(fb) < Math.abs(fa) ? b : a
    const least = (4e-16 * Math.abs(best) + q.tolerance) / Math.abs(b - a)
    if (least > 0.5 || fa === 0) return fa === 0 ? a : best
    const xi = (a - b) / (c - b)
    const phi = (fa - fb) / (fc - fb)
    share =
      phi * phi < xi && (1 - phi) * (1 - phi) < 1 - xi
        ? (fa / (fb - fa)) * (fc / (fb - fc)) + ((c - a) / (b - a)) * (fa / (fc - fa)) * (fb / (fc - fb))
        : 0.5
    share = Math.min(1 - least, Math.max(least, share))
  }
  throw new CalcError('no-convergence', { field: 'f', value: MOST_STEPS })
}
