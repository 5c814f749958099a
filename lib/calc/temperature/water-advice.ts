import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { HOTTEST_FOR_YEAST_C } from './constants'
import { ICE_CONSTANTS } from './ice-heat'
import { iceMassG } from './ice-mass'

export type WaterWarning = 'hotter-than-boiling' | 'too-hot-for-yeast' | 'use-ice' | 'much-ice' | 'colder-than-all-ice'

/** More ice than this share of the water seldom melts while mixing. Common practice, no source. */
const MOST_ICE = 0.5

/**
 * What is to be said of a water temperature that was worked out: that no water can be so, or should; and for water colder
 * than the tap how much of it is to be ice at 0 °C, in place of water.
 * @param waterTempC any; below 0 and above 100 it is a measure of heat
 * @param waterMassG with the ice, g, > 0; tapTempC 0 to 60 °C; null where not known
 * @returns iceMassG null where water and tap are not both known, and where all of the water as ice is not cold enough
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: heat balance, as iceMassG.
 */
export function waterAdvice(q: { waterTempC: number; waterMassG: number | null; tapTempC: number | null }): {
  iceMassG: number | null
  warnings: WaterWarning[]
} {
  const { waterTempC, waterMassG, tapTempC } = q
  mustBeWithin('waterTempC', waterTempC)
  if (waterMassG !== null) mustBeWithin('waterMassG', waterMassG, { over: 0 })
  if (tapTempC !== null) mustBeWithin('tapTempC', tapTempC, { min: 0, max: 60 })
  if (waterTempC > 100) return { iceMassG: null, warnings: ['hotter-than-boiling'] }
  if (waterTempC > HOTTEST_FOR_YEAST_C) return { iceMassG: null, warnings: ['too-hot-for-yeast'] }
  const warnings: WaterWarning[] = waterTempC < 0 ? ['use-ice'] : []
  if (waterMassG === null || tapTempC === null) return { iceMassG: null, warnings }
  if (waterTempC >= tapTempC) return { iceMassG: 0, warnings }
  const iceG = iceOrNull(waterMassG, tapTempC, waterTempC)
  if (iceG === null) return { iceMassG: null, warnings: ['colder-than-all-ice'] }
  return { iceMassG: iceG, warnings: iceG > MOST_ICE * waterMassG ? [...warnings, 'much-ice'] : warnings }
}

function iceOrNull(waterMassG: number, tapTempC: number, wantedTempC: number): number | null {
  // All of the water as ice stands for −80 °C or so: far below what iceMassG reckons with.
  if (wantedTempC < -60) return null
  try {
    return iceMassG({
      waterMassG,
      tapTempC,
      wantedTempC,
      iceTempC: 0,
      convention: 'replacing',
      constants: ICE_CONSTANTS,
    })
  } catch (error) {
    if (error instanceof CalcError && error.code === 'not-possible') return null
    throw error
  }
}
