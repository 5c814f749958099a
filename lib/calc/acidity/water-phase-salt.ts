import { mustBeWithin } from '../checks'
import { CalcError } from '../error'

/**
 * Salt in the water phase: salt / (salt + water), %. It is what microbes and yeast meet; salt on flour says less.
 * @param saltMassG g, ≥ 0; @param waterMassG all water, also that of flour and other ingredients, g, > 0
 * @returns %, and 'above-saturation' beyond what water at room temperature dissolves (26 %)
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'no-mass'
 * Source: definition as US food-safety guidance on salted fish has it; from memory.
 * @example 18 g salt and 720 g water: 2.44 %
 */
export function waterPhaseSalt(q: { saltMassG: number; waterMassG: number }): {
  waterPhaseSaltPct: number
  warnings: ('above-saturation' | 'no-proof-of-keeping')[]
} {
  mustBeWithin('saltMassG', q.saltMassG, { min: 0 })
  mustBeWithin('waterMassG', q.waterMassG, { over: 0 })
  const sum = q.saltMassG + q.waterMassG
  if (!Number.isFinite(sum)) throw new CalcError('not-finite', { field: 'waterMassG', value: String(sum) })
  const waterPhaseSaltPct = (100 * q.saltMassG) / sum
  return {
    waterPhaseSaltPct,
    warnings: waterPhaseSaltPct > SATURATED_PCT ? ['above-saturation', 'no-proof-of-keeping'] : ['no-proof-of-keeping'],
  }
}

/** Saturated brine at room temperature, g of salt in 100 g. From memory: 26.4. */
const SATURATED_PCT = 26.4
