import { mustBeWithin } from '../checks'
import type { Composition } from './types'

export type CompositionWarning = {
  code: 'not-closed' | 'looks-like-share' | 'sugars-above-carbohydrate' | 'fibre-above-carbohydrate' | 'not-stated'
  field: string
  value?: number
}

const PARTS = ['waterPct', 'proteinPct', 'fatPct', 'carbohydratePct', 'ashPct'] as const
const ALL = [...PARTS, 'sugarsPct', 'fibrePct', 'sodiumMgPer100g'] as const
/** Rounding of five printed values and loss of volatiles; most rows of USDA SR28 lie within 0.1. */
const CLOSURE_TOLERANCE_PCT = 0.5
/** Sum of the parts of a row that was typed as shares, 0.82 for 82 %: some of them may be missing. */
const LEAST_SHARE_SUM = 0.5
const MOST_SHARE_SUM = 1.02

/**
 * What is odd about a composition row. Official tables have rows that do not sum to 100 (fresh yeast 99.2,
 * vinegar 94.8, baking soda 37.1) and analysed sugars above carbohydrate by difference (whole milk),
 * so oddness is reported and never refused. A row whose parts come to about 1 was probably typed as shares.
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
  const stated = PARTS.flatMap((key) => composition[key] ?? [])
  const sumPct = stated.reduce((sum, value) => sum + value, 0)
  const isComplete = stated.length === PARTS.length
  // Shares of a whole sum to 1. A row without its water may honestly state so little.
  const isWhole = isComplete || composition.waterPct !== null
  if (
    isWhole &&
    sumPct >= LEAST_SHARE_SUM &&
    sumPct <= MOST_SHARE_SUM &&
    stated.some((value) => value > 0 && value < 1)
  ) {
    warnings.push({ code: 'looks-like-share', field, value: sumPct })
  } else if (isComplete ? Math.abs(sumPct - 100) > CLOSURE_TOLERANCE_PCT : sumPct > 100 + CLOSURE_TOLERANCE_PCT) {
    warnings.push({ code: 'not-closed', field, value: sumPct })
  }
  const { carbohydratePct, sugarsPct, fibrePct } = composition
  if (carbohydratePct !== null && sugarsPct !== null && sugarsPct > carbohydratePct) {
    warnings.push({ code: 'sugars-above-carbohydrate', field: `${field}.sugarsPct`, value: sugarsPct })
  }
  if (carbohydratePct !== null && fibrePct !== null && fibrePct > carbohydratePct) {
    warnings.push({ code: 'fibre-above-carbohydrate', field: `${field}.fibrePct`, value: fibrePct })
  }
  return warnings
}
