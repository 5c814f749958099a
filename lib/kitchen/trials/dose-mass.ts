import 'server-only'
import { productMassG } from '../../calc/dosing/product-mass'
import type { PlanDoseAsked } from './plan-types'

/** g of what is dosed in one g of flour, for a value of 1. */
const sharePerUnit = { pct_flour: 1 / 100, ppm_flour: 1 / 1_000_000, g_per_kg_flour: 1 / 1000 } as const

/**
 * Product for a dose, g, not rounded. A dose of the active substance takes the product's declared content at full
 * strength: no lot has been measured, and age alone never changes a dose.
 * @param dose of a value ≥ 0
 * @param flourG all flour of the control's dough, g
 * @param activeShare null for an ingredient without an active substance
 * @throws CalcError 'out-of-range'; Error for a dose of an active that the ingredient does not have
 * @example 100 ppm of an active on 5000 g of flour, product at 10 %: 5 g
 */
export function doseMassG(q: {
  dose: Pick<PlanDoseAsked, 'basis' | 'doseOf' | 'value'>
  flourG: number
  activeShare: number | null
}): number {
  const massG = q.dose.value * sharePerUnit[q.dose.basis] * q.flourG
  if (q.dose.doseOf === 'product') return massG
  if (q.activeShare === null) throw new Error('a dose of an active substance that the ingredient does not state')
  return productMassG({ activeMassG: massG, activeShare: q.activeShare, strengthShare: 1 })
}
