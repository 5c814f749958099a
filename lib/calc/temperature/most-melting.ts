import { iceHeatJPerG, type IceConstants } from './ice-heat'

/**
 * The most ice that melts in water: what brings it to 0 °C. More stays ice.
 * @param waterMassG g ≥ 0, tapTempC ≥ 0 °C, iceTempC −40 to 0 °C
 * @returns g
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: heat balance.
 * @example 8 kg at 20 °C with 80 · c for the heat of melting: 2 kg
 */
export function mostMeltingG(q: {
  waterMassG: number
  tapTempC: number
  iceTempC: number
  constants: IceConstants
}): number {
  return (
    (q.waterMassG * q.constants.waterSpecificHeatJPerGK * q.tapTempC) /
    iceHeatJPerG({ iceTempC: q.iceTempC, finalTempC: 0, constants: q.constants })
  )
}
