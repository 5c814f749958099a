import { mustBeWithin } from '../checks'

export type DoseUnit = 'pct-flour' | 'ppm-flour' | 'g-per-kg-flour'

/** Parts of flour in one unit of dose; ppm is mg per kg. */
const SHARE_OF_UNIT: Record<DoseUnit, number> = { 'pct-flour': 1e-2, 'ppm-flour': 1e-6, 'g-per-kg-flour': 1e-3 }

/**
 * Mass of active substance (or of product, for a dose stated as product) from a dose on flour.
 * @param dose value in its unit, ≥ 0
 * @param flourMassG total flour, g, > 0
 * @returns g, not rounded
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: definition of the units.
 * @example 45 ppm on 25 kg of flour: 1.125 g
 */
export function activeMassG(q: { dose: number; unit: DoseUnit; flourMassG: number }): number {
  mustBeWithin('dose', q.dose, { min: 0 })
  mustBeWithin('flourMassG', q.flourMassG, { over: 0 })
  return q.dose * SHARE_OF_UNIT[q.unit] * q.flourMassG
}
