import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { AVRAMI_EXPONENTS } from './firmness-at'
import { halfLifeDays } from './half-life'

/**
 * Exponent and rate of firming from two readings, start and end being known: the curve that goes through both. Two
 * readings settle two figures and say nothing of their error.
 * @param startFirmness E₀ ≥ 0, endFirmness E∞; the readings lie between them, the later one firmer
 * @param firstDays > 0, secondDays later
 * @returns exponent n, k for time in days, and the days to half of the firming
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'no-such-exponent' when it would lie
 *   outside 0.1 to 5
 * Source: Avrami equation, linear in ln(−ln) against ln t.
 * @example 2 towards 10, 3.5 on day 1 and 7.4 on day 4: n 1.218, k 0.2076
 */
export function avramiExponent(q: {
  startFirmness: number
  endFirmness: number
  firstDays: number
  firstFirmness: number
  secondDays: number
  secondFirmness: number
}): { avramiExponent: number; ratePerDay: number; halfLifeDays: number } {
  mustBeWithin('startFirmness', q.startFirmness, { min: 0 })
  mustBeWithin('endFirmness', q.endFirmness, { over: q.startFirmness })
  mustBeWithin('firstDays', q.firstDays, { over: 0 })
  mustBeWithin('secondDays', q.secondDays, { over: q.firstDays })
  mustBeWithin('firstFirmness', q.firstFirmness, { over: q.startFirmness, under: q.endFirmness })
  mustBeWithin('secondFirmness', q.secondFirmness, { over: q.firstFirmness, under: q.endFirmness })
  const doneOf = (firmness: number) => -Math.log((q.endFirmness - firmness) / (q.endFirmness - q.startFirmness))
  const exponent = Math.log(doneOf(q.secondFirmness) / doneOf(q.firstFirmness)) / Math.log(q.secondDays / q.firstDays)
  mustBeWithin('secondFirmness', exponent)
  if (exponent < AVRAMI_EXPONENTS.min || exponent > AVRAMI_EXPONENTS.max) {
    throw new CalcError('not-possible', {
      field: 'secondFirmness',
      value: exponent,
      ...AVRAMI_EXPONENTS,
      reason: 'no-such-exponent',
    })
  }
  const ratePerDay = mustBeWithin('firstFirmness', doneOf(q.firstFirmness) / q.firstDays ** exponent, { over: 0 })
  return { avramiExponent: exponent, ratePerDay, halfLifeDays: halfLifeDays({ ratePerDay, avramiExponent: exponent }) }
}
