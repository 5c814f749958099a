import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { iceMassG, type IceConvention } from './ice-mass'
import type { IceConstants } from './ice-heat'
import { mostMeltingG } from './most-melting'

export type WaterSource =
  | { outcome: 'mix'; coldMassG: number; hotMassG: number; iceMassG: 0 }
  | { outcome: 'ice'; coldMassG: number; hotMassG: 0; iceMassG: number }
  /** No water temperature can do it; `reachableTempC` is the nearest that can be had. */
  | {
      outcome: 'not-possible'
      reason: 'colder-than-all-ice' | 'hotter-than-allowed' | 'too-much-ice' | 'never-melts'
      reachableTempC: number
    }

/**
 * How to get mixing water of a wanted temperature: cold and hot tap mixed, or cold tap with ice, or a clear no.
 * @param waterMassG water of the formula, g, > 0. With ice 'replacing' it is water and ice together; with 'adding' the
 *   ice comes on top, and the dough has that much more water
 * @param wantedTempC from requiredWaterTemp or waterTempByFactor; below 0 °C is normal and means much ice
 * @param coldTempC, hotTempC what the taps give, 0 to 100 °C, cold not above hot
 * @param mostTempC hottest water allowed on the dough (yeast), °C
 * @param mostIceShare most ice as a share of waterMassG, 0 to 1: what still melts while mixing
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: heat balance.
 */
export function waterSource(q: {
  waterMassG: number
  wantedTempC: number
  coldTempC: number
  hotTempC: number
  mostTempC: number
  iceTempC: number
  convention: IceConvention
  mostIceShare: number
  constants: IceConstants
}): WaterSource {
  mustBeWithin('waterMassG', q.waterMassG, { over: 0 })
  mustBeWithin('wantedTempC', q.wantedTempC)
  mustBeWithin('coldTempC', q.coldTempC, { min: 0, max: 60 })
  mustBeWithin('hotTempC', q.hotTempC, { min: q.coldTempC, max: 100 })
  mustBeWithin('mostTempC', q.mostTempC, { min: q.coldTempC, max: 100 })
  mustBeWithin('mostIceShare', q.mostIceShare, { min: 0, max: 1 })

  if (q.wantedTempC >= q.coldTempC) {
    const warmestC = Math.min(q.hotTempC, q.mostTempC)
    if (q.wantedTempC > warmestC)
      return { outcome: 'not-possible', reason: 'hotter-than-allowed', reachableTempC: warmestC }
    const hotShare = q.hotTempC > q.coldTempC ? (q.wantedTempC - q.coldTempC) / (q.hotTempC - q.coldTempC) : 0
    const hotMassG = q.waterMassG * hotShare
    return { outcome: 'mix', coldMassG: q.waterMassG - hotMassG, hotMassG, iceMassG: 0 }
  }
  const iceG = iceOrNull(q)
  if (iceG !== null && iceG <= q.mostIceShare * q.waterMassG) {
    const coldMassG = q.convention === 'replacing' ? q.waterMassG - iceG : q.waterMassG
    return { outcome: 'ice', coldMassG, hotMassG: 0, iceMassG: iceG }
  }
  const most = q.mostIceShare * q.waterMassG
  if (q.convention === 'replacing')
    return {
      outcome: 'not-possible',
      reason: iceG === null ? 'colder-than-all-ice' : 'too-much-ice',
      reachableTempC: heatAsTempC(q, most),
    }
  const melting = mostMeltingG({ ...q, tapTempC: q.coldTempC })
  return {
    outcome: 'not-possible',
    reason: iceG === null ? 'never-melts' : 'too-much-ice',
    reachableTempC: heatAsTempC(q, Math.min(most, melting)),
  }
}

function iceOrNull(q: Parameters<typeof waterSource>[0]): number | null {
  // The range of wanted temperatures that ice can stand for at all is narrower than what a heat balance may ask for.
  if (q.wantedTempC < -60) return null
  try {
    return iceMassG({ ...q, tapTempC: q.coldTempC })
  } catch (error) {
    if (error instanceof CalcError && error.code === 'not-possible') return null
    throw error
  }
}

/** Temperature of water that would cool the dough as much as the water with this ice does; below 0 where ice is left to melt. */
function heatAsTempC(q: Parameters<typeof waterSource>[0], iceG: number): number {
  const { waterSpecificHeatJPerGK: c, latentHeatJPerG, iceSpecificHeatJPerGK } = q.constants
  const liquidG = q.convention === 'replacing' ? q.waterMassG - iceG : q.waterMassG
  const coldJ = iceG * (latentHeatJPerG + iceSpecificHeatJPerGK * -q.iceTempC)
  return (liquidG * c * q.coldTempC - coldJ) / ((liquidG + iceG) * c)
}
