import { mustBeWithin, mustHaveAtLeast } from '../checks'
import { WATER_SPECIFIC_HEAT_J_PER_G_K } from './constants'
import { heatOfParts } from './heat-of-parts'
import type { HeatPart } from './heat-of-parts'

export type BatchFriction = {
  /** Negative when the dough came out colder than its parts alone would be: a reading or a room exchange is wrong. */
  frictionJ: number
  /** On the dough alone, as requiredWaterTemp takes it. */
  riseC: number
  /** Over all mixing time; tells speeds apart only when the batch had one. */
  joulePerKgMin: number
}

/**
 * Friction heat of a batch that was mixed: what the dough holds more than its ingredients, bowl and room brought.
 * The inverse of requiredWaterTemp. It holds for doughs of like mass on the same mixer.
 * @param doughTempC measured at the end of mixing, °C, −5 to 60
 * @param parts every ingredient but the mixing water; at least one
 * @param waterMassG, waterTempC mixing water without ice, g > 0, 0 to 100 °C
 * @param mixingMinutes at all speeds, > 0
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range'
 * Source: heat balance.
 */
export function frictionOfBatch(q: {
  doughTempC: number
  parts: readonly HeatPart[]
  bowl: { heatCapacityJPerK: number; tempC: number } | null
  waterMassG: number
  waterTempC: number
  roomHeatJ: number
  mixingMinutes: number
}): BatchFriction {
  mustBeWithin('doughTempC', q.doughTempC, { min: -5, max: 60 })
  mustHaveAtLeast('parts', q.parts, 1)
  mustBeWithin('waterMassG', q.waterMassG, { over: 0 })
  mustBeWithin('waterTempC', q.waterTempC, { min: 0, max: 100 })
  mustBeWithin('roomHeatJ', q.roomHeatJ)
  mustBeWithin('mixingMinutes', q.mixingMinutes, { over: 0 })
  const { heatJ, partsJPerK, partsMassG } = heatOfParts(q)
  const waterJPerK = q.waterMassG * WATER_SPECIFIC_HEAT_J_PER_G_K
  const doughJPerK = waterJPerK + partsJPerK
  const doughMassG = q.waterMassG + partsMassG
  const frictionJ = waterJPerK * (q.doughTempC - q.waterTempC) + heatJ - q.roomHeatJ
  return {
    frictionJ,
    riseC: frictionJ / doughJPerK,
    joulePerKgMin: frictionJ / ((doughMassG / 1000) * q.mixingMinutes),
  }
}
