import { mustBeWithin } from '../checks'

/**
 * Mass of a product that brings a wanted mass of its active substance: m = a / (w · s).
 * @param activeMassG active substance wanted, g, ≥ 0
 * @param activeShare active substance in the product as declared, mass share, 0 < w ≤ 1
 * @param strengthShare part of the declared activity still there, measured on the lot and never guessed from age, 0 < s ≤ 1
 * @returns product mass, g, not rounded
 * @throws CalcError 'not-finite' | 'out-of-range', with field, value and bounds
 * Source: mass balance; common practice, no source.
 * @example productMassG({ activeMassG: 2, activeShare: 0.5, strengthShare: 0.8 }) // 5
 */
export function productMassG(q: { activeMassG: number; activeShare: number; strengthShare: number }): number {
  mustBeWithin('activeMassG', q.activeMassG, { min: 0 })
  mustBeWithin('activeShare', q.activeShare, { over: 0, max: 1 })
  mustBeWithin('strengthShare', q.strengthShare, { over: 0, max: 1 })
  return q.activeMassG / (q.activeShare * q.strengthShare)
}
