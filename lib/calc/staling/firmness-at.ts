import { mustBeWithin } from '../checks'

/**
 * Firmness of crumb after a time of storage, first order (Avrami with exponent 1): E = E∞ − (E∞ − E₀)·exp(−k·t).
 * k is of one storage temperature and falls as it gets warmer (between about −1 and 32 °C); E₀ and E∞ are in one unit.
 * @param startFirmness E₀ ≥ 0; endFirmness E∞ > E₀; any one unit of force or modulus
 * @param ratePerDay k > 0; @param days ≥ 0
 * @returns in the unit of E₀ and E∞
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: S. J. Cornford, D. W. E. Axford, G. A. H. Elton (1964), Cereal Chemistry 41: 216–229.
 * @example from 2 towards 10 at 0.35 a day: 4.36 after one day
 */
export function firmnessAt(q: { startFirmness: number; endFirmness: number; ratePerDay: number; days: number }): number {
  mustBeWithin('startFirmness', q.startFirmness, { min: 0 })
  mustBeWithin('endFirmness', q.endFirmness, { over: q.startFirmness })
  mustBeWithin('ratePerDay', q.ratePerDay, { over: 0 })
  mustBeWithin('days', q.days, { min: 0 })
  return q.endFirmness - (q.endFirmness - q.startFirmness) * Math.exp(-q.ratePerDay * q.days)
}
