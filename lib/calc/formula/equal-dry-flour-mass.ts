import { mustBeWithin } from '../checks'

/**
 * Mass of flour at one moisture that holds the dry matter of a flour mass at another.
 * @param flourMassG flour at `fromMoisturePct`, g, ≥ 0
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: 86-based rule of AACC 54-21, generalised; mass balance of dry matter.
 * @example 300 g at 14 % equal 293.18 g at 12 %
 */
export function equalDryFlourMassG(q: { flourMassG: number; fromMoisturePct: number; toMoisturePct: number }): number {
  mustBeWithin('flourMassG', q.flourMassG, { min: 0 })
  mustBeWithin('fromMoisturePct', q.fromMoisturePct, { min: 0, under: 100 })
  mustBeWithin('toMoisturePct', q.toMoisturePct, { min: 0, under: 100 })
  return (q.flourMassG * (100 - q.fromMoisturePct)) / (100 - q.toMoisturePct)
}
