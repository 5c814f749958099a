import { mustBeWithin } from '../checks'
import type { Composition } from './types'

export type CompositionWarning = {
  code: 'not-closed' | 'sugars-above-carbohydrate' | 'fibre-above-carbohydrate' | 'not-stated'
  field: string
  value?: number
}

const PARTS = ['waterPct', 'proteinPct', 'fatPct', 'carbohydratePct', 'ashPct'] as const
const ALL = [...PARTS, 'sugarsPct', 'fibrePct', 'sodiumMgPer100g'] as const
/** Rounding of five printed values and loss of volatiles; most rows of USDA SR28 lie within 0.1. */
const CLOSURE_TOLERANCE_PCT = 0.5

/**
 * What is odd about a composition row. Official tables have rows that do not sum to 100 (fresh yeast 99.2,
 * vinegar 94.8, baking soda 37.1) and analysed sugars above carbohydrate by difference (whole milk),
 * so oddness is reported and never refused.
 * @param field name of the row, put before the field at fault
 * @throws CalcError 'not-finite' | 'out-of-range' when a stated value lies outside 0 to 100 % (sodium 0 to 100 000 mg)
 * Source: USDA National Nutrient Database for Standard Reference, release 28, 2015 (rows 18374, 02053, 18372, 01077).
 */
export function compositionWarnings(field: string, composition: Composition): CompositionWarning[] {
  const warnings: CompositionWarning[] = []
  for (const key of ALL) {
    const value = composition[key]
    if (value === null) warnings.push({ code: 'not-stated', field: `${field}.${key}` })
    else mustBeWithin(`${field}.${key}`, value, { min: 0, max: key === 'sodiumMgPer100g' ? 100_000 : 100 })
  }
  let sumPct = 0
  let complete = true
  for (const key of PARTS) {
    const value = composition[key]
    if (value === null) complete = false
    else sumPct += value
  }
  if (complete && Math.abs(sumPct - 100) > CLOSURE_TOLERANCE_PCT) warnings.push({ code: 'not-closed', field, value: sumPct })
  const { carbohydratePct, sugarsPct, fibrePct } = composition
  if (carbohydratePct !== null && sugarsPct !== null && sugarsPct > carbohydratePct) {
    warnings.push({ code: 'sugars-above-carbohydrate', field: `${field}.sugarsPct`, value: sugarsPct })
  }
  if (carbohydratePct !== null && fibrePct !== null && fibrePct > carbohydratePct) {
    warnings.push({ code: 'fibre-above-carbohydrate', field: `${field}.fibrePct`, value: fibrePct })
  }
  return warnings
}
