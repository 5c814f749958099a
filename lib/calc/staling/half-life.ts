import { mustBeWithin } from '../checks'

/**
 * Days until half of the firming still to come is done: ln 2 / k.
 * @param ratePerDay k of firmnessAt, > 0
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: first-order kinetics; rate as in Cornford, Axford and Elton (1964).
 * @example 0.35 a day: 1.98 days
 */
export function halfLifeDays(q: { ratePerDay: number }): number {
  return mustBeWithin('ratePerDay', Math.LN2 / mustBeWithin('ratePerDay', q.ratePerDay, { over: 0 }))
}
