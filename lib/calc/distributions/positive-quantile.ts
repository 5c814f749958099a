import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { bracketedRoot } from './bracketed-root'

const LEAST_LOG = -800

/**
 * The x > 0 at which a tail probability equals p, searched on ln x and ln p so that small values keep their digits.
 * @param tail probability as a function of x, monotone, 0 at one end
 * @param p 0 < p < 1; @param start a guess, > 0
 * @throws CalcError 'not-finite' | 'out-of-range' | 'no-convergence' (no such x between 1e-300 and 1e300)
 * Source: root search, see bracketedRoot.
 */
export function positiveQuantile(q: { tail: (x: number) => number; p: number; start: number }): number {
  const goal = Math.log(mustBeWithin('p', q.p, { over: 0, under: 1 }))
  const f = (logX: number) => Math.max(LEAST_LOG, Math.log(q.tail(Math.exp(logX)))) - goal
  const middle = Math.log(mustBeWithin('start', q.start, { over: 0 }))
  for (let reach = 0.5; reach < 1400; reach *= 2) {
    const [low, high] = [Math.max(-690, middle - reach), Math.min(690, middle + reach)]
    if (f(low) > 0 !== f(high) > 0) return Math.exp(bracketedRoot({ f, low, high, tolerance: 1e-15 }))
  }
  throw new CalcError('no-convergence', { field: 'p', value: q.p })
}
