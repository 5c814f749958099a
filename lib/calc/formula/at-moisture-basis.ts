import { mustBeWithin } from '../checks'

/**
 * Moisture bases in use, %: a field and never a habit.
 * Source: Cereals Canada, methods page; Hamelman, Bread, 2004; Russian encyclopaedia entry on bread yield.
 */
export const MOISTURE_BASES_PCT = {
  'us-flour': 14,
  'canadian-wheat': 13.5,
  alveograph: 15,
  'russian-bread-yield': 14.5,
  dry: 0,
} as const

/**
 * A figure as measured, restated at another moisture: value × (100 − B) / (100 − M).
 * @param valuePct figure at the flour's own moisture (protein, ash …), %, ≥ 0
 * @param moisturePct moisture of the flour, %, 0 ≤ M < 100
 * @param basisPct moisture to restate at, %, 0 ≤ B < 100
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: flour guide of a US milling company, 2006.
 * @example protein 11.98 at 13.36 % moisture is 11.8915 at 14 %
 */
export function atMoistureBasisPct(q: { valuePct: number; moisturePct: number; basisPct: number }): number {
  mustBeWithin('valuePct', q.valuePct, { min: 0 })
  mustBeWithin('moisturePct', q.moisturePct, { min: 0, under: 100 })
  mustBeWithin('basisPct', q.basisPct, { min: 0, under: 100 })
  return (q.valuePct * (100 - q.basisPct)) / (100 - q.moisturePct)
}
