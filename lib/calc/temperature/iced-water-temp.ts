import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { iceHeatJPerG, type IceConstants } from './ice-heat'
import { mostMeltingG } from './most-melting'

/**
 * Temperature of water after ice has melted in it.
 * @param waterMassG liquid water at tapTempC, g, ≥ 0; iceMassG g, ≥ 0; together > 0
 * @returns °C; when ice is left over the mixture stays at 0 °C and so 0 is returned with the ice that is left, g
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'freezes' when the ice is so cold that
 *   water would freeze, or 'never-melts', with the most that melts, when there is more ice than water: even from the
 *   hottest tap that is too much
 * Source: heat balance.
 */
export function icedWaterTemp(q: {
  waterMassG: number
  tapTempC: number
  iceMassG: number
  iceTempC: number
  constants: IceConstants
}): { tempC: number; iceLeftG: number } {
  mustBeWithin('waterMassG', q.waterMassG, { min: 0 })
  mustBeWithin('tapTempC', q.tapTempC, { min: 0, max: 60 })
  mustBeWithin('iceMassG', q.iceMassG, { min: 0 })
  const totalG = mustBeWithin('totalMassG', q.waterMassG + q.iceMassG, { over: 0 })
  const toMeltJPerG = iceHeatJPerG({ iceTempC: q.iceTempC, finalTempC: 0, constants: q.constants })
  const givenJ = q.waterMassG * q.constants.waterSpecificHeatJPerGK * q.tapTempC
  const restJ = givenJ - q.iceMassG * toMeltJPerG
  if (restJ >= 0) return { tempC: restJ / (totalG * q.constants.waterSpecificHeatJPerGK), iceLeftG: 0 }
  const warmedJ = givenJ - q.iceMassG * q.constants.iceSpecificHeatJPerGK * -q.iceTempC
  if (warmedJ < 0) throw new CalcError('not-possible', { field: 'iceTempC', value: q.iceTempC, reason: 'freezes' })
  if (q.iceMassG > q.waterMassG)
    throw new CalcError('not-possible', {
      field: 'iceMassG',
      value: q.iceMassG,
      max: Number(mostMeltingG(q).toPrecision(4)),
      reason: 'never-melts',
    })
  return { tempC: 0, iceLeftG: q.iceMassG - warmedJ / q.constants.latentHeatJPerG }
}
