import { mustBeWithin } from '../checks'
import { AVRAMI_EXPONENTS } from './firmness-at'

/**
 * Days until half of the firming still to come is done: (ln 2 / k)^(1/n).
 * @param ratePerDay k of firmnessAt, > 0; @param avramiExponent n of firmnessAt, 0.1 to 5; 1 unless given
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Avrami kinetics, first order with exponent 1; rate as in Cornford, Axford and Elton (1964).
 * @example 0.35 a day: 1.98 days
 */
export function halfLifeDays(q: { ratePerDay: number; avramiExponent?: number | undefined }): number {
  const ratePerDay = mustBeWithin('ratePerDay', q.ratePerDay, { over: 0 })
  const exponent = mustBeWithin('avramiExponent', q.avramiExponent ?? 1, AVRAMI_EXPONENTS)
  return mustBeWithin('ratePerDay', (Math.LN2 / ratePerDay) ** (1 / exponent))
}
