import { mustBeWithin } from '../checks'
import { ICE_LATENT_HEAT_J_PER_G, ICE_SPECIFIC_HEAT_J_PER_G_K, WATER_SPECIFIC_HEAT_J_PER_G_K } from './constants'

/** Constants that may be replaced, for a source that uses others. */
export type IceConstants = { latentHeatJPerG: number; waterSpecificHeatJPerGK: number; iceSpecificHeatJPerGK: number }

export const ICE_CONSTANTS: IceConstants = {
  latentHeatJPerG: ICE_LATENT_HEAT_J_PER_G,
  waterSpecificHeatJPerGK: WATER_SPECIFIC_HEAT_J_PER_G_K,
  iceSpecificHeatJPerGK: ICE_SPECIFIC_HEAT_J_PER_G_K,
}

/**
 * Heat that a gram of ice takes up until it is water at a temperature: warming to 0 °C, melting, warming on.
 * @param iceTempC −40 to 0 °C
 * @param finalTempC may lie below 0: a wanted water temperature of −5 °C stands for so much heat taken out
 * @returns J/g
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: heat balance.
 */
export function iceHeatJPerG(q: { iceTempC: number; finalTempC: number; constants: IceConstants }): number {
  mustBeWithin('iceTempC', q.iceTempC, { min: -40, max: 0 })
  mustBeWithin('finalTempC', q.finalTempC, { min: -60, max: 100 })
  mustBeWithin('constants.latentHeatJPerG', q.constants.latentHeatJPerG, { over: 0 })
  mustBeWithin('constants.waterSpecificHeatJPerGK', q.constants.waterSpecificHeatJPerGK, { over: 0 })
  mustBeWithin('constants.iceSpecificHeatJPerGK', q.constants.iceSpecificHeatJPerGK, { over: 0 })
  return (
    q.constants.iceSpecificHeatJPerGK * -q.iceTempC +
    q.constants.latentHeatJPerG +
    q.constants.waterSpecificHeatJPerGK * q.finalTempC
  )
}
