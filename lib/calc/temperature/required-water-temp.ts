import { mustBeWithin } from '../checks'
import { WATER_SPECIFIC_HEAT_J_PER_G_K } from './constants'
import { heatOfParts, type HeatPart } from './heat-of-parts'

/** Heat that mixing puts in: a temperature rise of the dough, or energy per kg of dough and minute at each speed. */
export type Friction =
  | { by: 'rise'; riseC: number }
  | { by: 'energy'; phases: readonly { joulePerKgMin: number; minutes: number }[] }

export type RequiredWaterTemp = {
  /** May lie below 0 or above 100: then it is a measure of heat, and waterSource says whether and how to meet it. */
  waterTempC: number
  frictionJ: number
  /** Heat capacity of dough, water and bowl, J/K: how far the dough is off for a given error of heat. */
  heatCapacityJPerK: number
}

/**
 * Temperature of the mixing water for a wanted dough temperature, by heat balance:
 * m_w c_w (T − T_w) = Q − Σ m c (T − T_i), so T_w = T + (Σ m c (T − T_i) − Q) / (m_w c_w).
 * Heat of hydration of flour (about 2 to 3 °C in dry flours) is part of the friction learned from earlier batches.
 * @param doughTempC wanted, °C, −5 to 60
 * @param parts every ingredient but the mixing water, pre-ferments whole; masses g ≥ 0, temperatures −40 to 100 °C
 * @param bowl what is warmed besides the dough, by heat capacity, J/K ≥ 0; null when it is at dough temperature
 * @param waterMassG mixing water with any ice, g, > 0
 * @param friction 'rise' is of the dough alone, not of the bowl
 * @param roomHeatJ heat from the room while mixing, J; negative when the room cools the dough
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: heat balance; specific heats by specificHeatJPerGK.
 */
export function requiredWaterTemp(q: {
  doughTempC: number
  parts: readonly HeatPart[]
  bowl: { heatCapacityJPerK: number; tempC: number } | null
  waterMassG: number
  friction: Friction
  roomHeatJ: number
}): RequiredWaterTemp {
  mustBeWithin('doughTempC', q.doughTempC, { min: -5, max: 60 })
  mustBeWithin('waterMassG', q.waterMassG, { over: 0 })
  mustBeWithin('roomHeatJ', q.roomHeatJ)
  const waterJPerK = q.waterMassG * WATER_SPECIFIC_HEAT_J_PER_G_K
  const { heatJ: neededJ, partsJPerK, partsMassG } = heatOfParts(q)
  const doughJPerK = waterJPerK + partsJPerK
  const doughMassG = q.waterMassG + partsMassG
  const heatCapacityJPerK = doughJPerK + (q.bowl?.heatCapacityJPerK ?? 0)
  const frictionJ = heatOfFriction(q.friction, doughJPerK, doughMassG)
  return {
    waterTempC: q.doughTempC + (neededJ - frictionJ - q.roomHeatJ) / waterJPerK,
    frictionJ,
    heatCapacityJPerK,
  }
}

function heatOfFriction(friction: Friction, doughJPerK: number, doughMassG: number): number {
  switch (friction.by) {
    case 'rise':
      return mustBeWithin('friction.riseC', friction.riseC, { min: 0, max: 40 }) * doughJPerK
    case 'energy':
      return friction.phases.reduce((sum, phase, i) => {
        mustBeWithin(`friction.phases[${i}].joulePerKgMin`, phase.joulePerKgMin, { min: 0 })
        mustBeWithin(`friction.phases[${i}].minutes`, phase.minutes, { min: 0 })
        return sum + (phase.joulePerKgMin * phase.minutes * doughMassG) / 1000
      }, 0)
    default: {
      const never: never = friction
      return never
    }
  }
}
