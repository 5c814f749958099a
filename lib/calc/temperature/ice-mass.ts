import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { iceHeatJPerG, type IceConstants } from './ice-heat'
import { mostMeltingG } from './most-melting'

/** Ice in place of part of the water, total mass kept; or put into all of the water, total mass grown. */
export type IceConvention = 'replacing' | 'adding'

/**
 * Ice that brings mixing water from the tap's temperature to a wanted one.
 * replacing: i · h = (W − i) c (T_tap − T); adding: i · h = W c (T_tap − T), with h the heat that ice takes up to T.
 * With ice at 0 °C these are the trade's W (T_tap − T)/(T_tap + L/c) and W (T_tap − T)/(T + L/c).
 * @param waterMassG replacing: water and ice together; adding: the water that ice is put into; g, > 0
 * @param tapTempC 0 to 60 °C
 * @param wantedTempC not above the tap. Replacing: below 0 is a normal input (heat that the dough needs taken out). Adding:
 *   not below 0, because more ice than brings the water to 0 °C does not melt in it
 * @param iceTempC −40 to 0 °C
 * @returns ice, g. When replacing, never more than the water: otherwise refused
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'ice-exceeds-water' when all of the water
 *   as ice is not cold enough, or 'never-melts' with the most that melts, g
 * Source: heat balance; the trade rule's 112 in °F is 144 − 32 (common practice).
 * @example 40 kg, tap 20 °C, wanted 10 °C, ice at 0 °C: replacing 4.00 kg, adding 4.45 kg
 */
export function iceMassG(q: {
  waterMassG: number
  tapTempC: number
  wantedTempC: number
  iceTempC: number
  convention: IceConvention
  constants: IceConstants
}): number {
  mustBeWithin('waterMassG', q.waterMassG, { over: 0 })
  mustBeWithin('tapTempC', q.tapTempC, { min: 0, max: 60 })
  mustBeWithin('wantedTempC', q.wantedTempC, { max: q.tapTempC })
  const takenJPerG = iceHeatJPerG({ iceTempC: q.iceTempC, finalTempC: q.wantedTempC, constants: q.constants })
  const givenJPerG = q.constants.waterSpecificHeatJPerGK * (q.tapTempC - q.wantedTempC)
  switch (q.convention) {
    case 'adding':
      if (q.wantedTempC < 0)
        throw new CalcError('not-possible', {
          field: 'wantedTempC',
          value: q.wantedTempC,
          max: Number(mostMeltingG(q).toPrecision(4)),
          reason: 'never-melts',
        })
      return (q.waterMassG * givenJPerG) / takenJPerG
    case 'replacing': {
      if (takenJPerG < 0)
        throw new CalcError('not-possible', { field: 'wantedTempC', value: q.wantedTempC, reason: 'ice-exceeds-water' })
      return givenJPerG === 0 ? 0 : (q.waterMassG * givenJPerG) / (takenJPerG + givenJPerG)
    }
    default: {
      const never: never = q.convention
      return never
    }
  }
}
