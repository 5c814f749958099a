import 'server-only'
import { ICE_CONSTANTS } from '../../calc/temperature/ice-heat'
import { waterSource } from '../../calc/temperature/water-source'
import { roundToScaleG } from '../../calc/weighing/round-to-scale'
import type { PlanWaters, WaterPart } from './plan-types'

/** What is taken where nobody wrote it down: common practice, no source. */
export const usualWaters = { hot: { tempC: 55, mostC: 60 }, ice: { tempC: 0 } }
/** Most ice that melts while mixing, as a share of the water: common practice, no source. */
const mostIceShare = 0.5

type Found =
  | { outcome: 'mix'; parts: WaterPart[] }
  | {
      outcome: 'not-possible'
      reason: 'colder-than-all-ice' | 'hotter-than-allowed' | 'too-much-ice' | 'never-melts'
      nearestTempC: number
      parts: WaterPart[]
    }

/**
 * What to make mixing water of: the tap with hot water, with chilled water, or with ice in place of part of it; the
 * chiller's water takes the tap's place where ice is needed too. Where no water does it, the nearest that can be had.
 * Parts are on the marks of the scale and add up to the water.
 * @param waterG > 0; wantedTempC of a heat balance, may lie below 0; tapTempC 0 to 60 °C
 * @param resolutionG steps of the water's scale, g, > 0
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: heat balance, as waterSource.
 */
export function wayOfWater(q: {
  waterG: number
  wantedTempC: number
  tapTempC: number
  waters: PlanWaters
  resolutionG: number
}): Found {
  const tap: Water = { from: 'tap', tempC: q.tapTempC, isUsual: false }
  const written = q.waters.hot ?? usualWaters.hot
  const hot: Water = { from: 'hot', tempC: Math.max(written.tempC, tap.tempC), isUsual: q.waters.hot === null }
  const chilled: Water | null =
    q.waters.chilled && q.waters.chilled.tempC < tap.tempC
      ? { from: 'chilled', tempC: q.waters.chilled.tempC, isUsual: false }
      : null
  const ice: Water = { from: 'ice', tempC: (q.waters.ice ?? usualWaters.ice).tempC, isUsual: q.waters.ice === null }
  const isCooled = q.wantedTempC < tap.tempC && chilled !== null
  const cold = isCooled ? chilled : tap
  const warm = isCooled ? tap : hot
  const source = waterSource({
    waterMassG: q.waterG,
    wantedTempC: q.wantedTempC,
    coldTempC: cold.tempC,
    hotTempC: warm.tempC,
    mostTempC: Math.max(isCooled ? tap.tempC : written.mostC, tap.tempC),
    iceTempC: ice.tempC,
    convention: 'replacing',
    mostIceShare,
    constants: ICE_CONSTANTS,
  })
  switch (source.outcome) {
    case 'mix':
      return { outcome: 'mix', parts: inParts(q, cold, warm, source.hotMassG) }
    case 'ice':
      return { outcome: 'mix', parts: inParts(q, cold, ice, source.iceMassG) }
    case 'not-possible': {
      const nearest = { outcome: 'not-possible' as const, reason: source.reason, nearestTempC: source.reachableTempC }
      if (source.reason !== 'hotter-than-allowed')
        return { ...nearest, parts: inParts(q, cold, ice, mostIceShare * q.waterG) }
      const hotShare = warm.tempC > cold.tempC ? (source.reachableTempC - cold.tempC) / (warm.tempC - cold.tempC) : 0
      return { ...nearest, parts: inParts(q, cold, warm, hotShare * q.waterG) }
    }
    default:
      return source satisfies never
  }
}

type Water = Omit<WaterPart, 'massG'>

/** Two waters of which the second is rounded to the scale and the first is the rest; none that is not there. */
function inParts(
  q: { waterG: number; resolutionG: number },
  first: Water,
  second: Water,
  secondG: number,
): WaterPart[] {
  const massG = Math.min(q.waterG, roundToScaleG({ massG: secondG, resolutionG: q.resolutionG }))
  const restG = Number((q.waterG - massG).toPrecision(14))
  return [
    { ...first, massG: restG },
    { ...second, massG },
  ].filter((part) => part.massG > 0)
}
