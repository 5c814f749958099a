import { mustBeWithin } from '../checks'

/** Avrami exponents found for bread lie about 1; beyond these a figure is a slip. */
export const AVRAMI_EXPONENTS = { min: 0.1, max: 5 } as const

/**
 * Firmness of crumb after a time of storage (Avrami): E = E∞ − (E∞ − E₀)·exp(−k·tⁿ). With exponent 1 it is first order.
 * k is of one storage temperature and falls as it gets warmer (between about −1 and 32 °C); E₀ and E∞ are in one unit.
 * @param startFirmness E₀ ≥ 0; endFirmness E∞ > E₀; any one unit of force or modulus
 * @param ratePerDay k > 0, for the time in days; @param days ≥ 0; @param avramiExponent n, 0.1 to 5; 1 unless given
 * @returns in the unit of E₀ and E∞
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: S. J. Cornford, D. W. E. Axford, G. A. H. Elton (1964), Cereal Chemistry 41: 216–229.
 * @example from 2 towards 10 at 0.35 a day: 4.36 after one day
 */
export function firmnessAt(q: {
  startFirmness: number
  endFirmness: number
  ratePerDay: number
  days: number
  avramiExponent?: number | undefined
}): number {
  mustBeWithin('startFirmness', q.startFirmness, { min: 0 })
  mustBeWithin('endFirmness', q.endFirmness, { over: q.startFirmness })
  mustBeWithin('ratePerDay', q.ratePerDay, { over: 0 })
  mustBeWithin('days', q.days, { min: 0 })
  const exponent = mustBeWithin('avramiExponent', q.avramiExponent ?? 1, AVRAMI_EXPONENTS)
  return q.endFirmness - (q.endFirmness - q.startFirmness) * Math.exp(-q.ratePerDay * q.days ** exponent)
}
