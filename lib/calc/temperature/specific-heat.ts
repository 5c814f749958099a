import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import type { Composition } from '../formula/types'

/** J/(g·K) = a + b·T + c·T², T in °C. Choi and Okos 1986, as in ASHRAE Handbook, Refrigeration, Thermal properties of foods. */
const COEFFICIENTS = {
  water: [4.1762, -9.0864e-5, 5.4731e-6],
  protein: [2.0082, 1.2089e-3, -1.3129e-6],
  fat: [1.9842, 1.4733e-3, -4.8008e-6],
  carbohydrate: [1.5488, 1.9625e-3, -5.9399e-6],
  fibre: [1.8459, 1.8306e-3, -4.6509e-6],
  ash: [1.0926, 1.8896e-3, -3.6817e-6],
} as const

/**
 * Specific heat of an ingredient from its composition: the mass-weighted sum over its parts.
 * Carbohydrate by difference includes fibre, so fibre is taken off it. Shares are divided by their sum, because rows of
 * composition tables need not close. Latent heat of melting fat is not in it: butter between 10 and 35 °C takes up more.
 * @param composition per 100 g; water, protein, fat, carbohydrate and ash stated; fibre not stated counts as carbohydrate
 * @param tempC 0 ≤ T ≤ 100 °C, unfrozen (the equations hold to 150 °C)
 * @returns J/(g·K), the same number as kJ/(kg·K)
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'not-stated'
 * Source: Y. Choi and M. R. Okos, Effects of temperature and composition on the thermal properties of foods, 1986.
 * @example water at 20 °C: 4.1766
 */
export function specificHeatJPerGK(q: { composition: Composition; tempC: number }): number {
  const { composition, tempC } = q
  mustBeWithin('tempC', tempC, { min: 0, max: 100 })
  const stated = (field: keyof Composition) => {
    const value = composition[field]
    if (value === null) throw new CalcError('not-possible', { field: `composition.${field}`, reason: 'not-stated' })
    return mustBeWithin(`composition.${field}`, value, { min: 0, max: 100 })
  }
  const carbohydratePct = stated('carbohydratePct')
  const fibrePct = composition.fibrePct === null ? 0 : Math.min(stated('fibrePct'), carbohydratePct)
  const parts = [
    [stated('waterPct'), COEFFICIENTS.water],
    [stated('proteinPct'), COEFFICIENTS.protein],
    [stated('fatPct'), COEFFICIENTS.fat],
    [carbohydratePct - fibrePct, COEFFICIENTS.carbohydrate],
    [fibrePct, COEFFICIENTS.fibre],
    [stated('ashPct'), COEFFICIENTS.ash],
  ] as const
  const sumPct = mustBeWithin(
    'composition',
    parts.reduce((sum, [pct]) => sum + pct, 0),
    { over: 0 },
  )
  return parts.reduce((sum, [pct, [a, b, c]]) => sum + pct * (a + b * tempC + c * tempC ** 2), 0) / sumPct
}
