import { mustBeWithin } from '../checks'
import { ICE_CONSTANTS, type IceConstants } from './ice-heat'

/**
 * The constants of ice and water that somebody gave, for a table that was worked out with others; ours for the rest.
 * A heat of melting of 80 (calories) or 144 (BTU per lb) is out of range: it is asked for in J/g, where they are 335.
 * @param latentHeatJPerG 300 to 370; waterSpecificHeatJPerGK 4 to 4.4; iceSpecificHeatJPerGK 1.8 to 2.3
 * @throws CalcError 'not-finite' | 'out-of-range'
 */
export function statedIceConstants(q: { [Name in keyof IceConstants]?: number | undefined }): IceConstants {
  return {
    latentHeatJPerG: mustBeWithin('latentHeatJPerG', q.latentHeatJPerG ?? ICE_CONSTANTS.latentHeatJPerG, {
      min: 300,
      max: 370,
    }),
    waterSpecificHeatJPerGK: mustBeWithin(
      'waterSpecificHeatJPerGK',
      q.waterSpecificHeatJPerGK ?? ICE_CONSTANTS.waterSpecificHeatJPerGK,
      { min: 4, max: 4.4 },
    ),
    iceSpecificHeatJPerGK: mustBeWithin(
      'iceSpecificHeatJPerGK',
      q.iceSpecificHeatJPerGK ?? ICE_CONSTANTS.iceSpecificHeatJPerGK,
      { min: 1.8, max: 2.3 },
    ),
  }
}
