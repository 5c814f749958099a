import { mustBeWithin } from '../checks'
import { mustBeSameActivity } from './must-be-same-activity'
import type { Activity } from './types'

/**
 * Mass of an enzyme product that brings a wanted activity on flour.
 * @param unitsPerKgFlour dose, activity units per kg of flour, ≥ 0, found by the assay `wanted`
 * @param flourMassG total flour, g, > 0
 * @param product declared activity, units per g, > 0, its assay, and the part of it still there, 0 < s ≤ 1
 * @returns g, not rounded
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'dose-by-effect' when the assays differ
 * Source: mass balance; common practice, no source.
 * @example 5000 units/kg, 10 kg of flour, 20 000 units/g at full strength: 2.5 g
 */
export function activityProductMassG(q: {
  unitsPerKgFlour: number
  wanted: Activity
  flourMassG: number
  product: { activity: Activity; unitsPerG: number; strengthShare: number }
}): number {
  mustBeWithin('unitsPerKgFlour', q.unitsPerKgFlour, { min: 0 })
  mustBeWithin('flourMassG', q.flourMassG, { over: 0 })
  mustBeWithin('product.unitsPerG', q.product.unitsPerG, { over: 0 })
  mustBeWithin('product.strengthShare', q.product.strengthShare, { over: 0, max: 1 })
  mustBeSameActivity('product.activity', q.wanted, q.product.activity)
  return (q.unitsPerKgFlour * (q.flourMassG / 1000)) / (q.product.unitsPerG * q.product.strengthShare)
}
