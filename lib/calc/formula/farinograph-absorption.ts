import { mustBeWithin } from '../checks'
import { CalcError } from '../error'

/** mL of water per farinograph unit off the 500 line; ISO 5530-1 (from memory). */
const ML_PER_UNIT = { 300: 0.096, 50: 0.016 } as const

/** Flour put in, as a share of the bowl: dry flour at the one end, 22 % moisture at the other; above that it moulds. */
const FLOUR_OF_BOWL = { least: 0.86, most: 0.86 / 0.78 }
/** Outside the first a reading is a slip, outside the second it is no wheat flour's: common practice, no source. */
const ABSORPTION_PCT = { possible: { min: 20, max: 120 }, usual: { min: 45, max: 75 } }

export type FarinographAbsorption = { absorptionPct: number; warnings: 'unusual-absorption'[] }

/**
 * Water absorption at 14 % moisture basis from a farinograph run, with the correction to 500 units.
 * @param bowlG 300 or 50
 * @param flourMassG flour put in (equal to the bowl's mass at 14 % moisture), g, 0.86 to 1.103 times the bowl
 * @param waterMl water put in, mL, for an absorption of 20 to 120 %
 * @param consistencyUnits consistency reached; 500 leaves the water as it is; ISO 5530-1 corrects from 480 to 520
 * @returns absorption, %; a warning outside 45 to 75 %
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: AACC 54-21 and ISO 5530-1, formulas from memory.
 * @example bowl 300, 294.5 g, 183.2 mL at 500 units: 59.233 %
 */
export function farinographAbsorption(q: {
  bowlG: 300 | 50
  flourMassG: number
  waterMl: number
  consistencyUnits: number
}): FarinographAbsorption {
  if (q.bowlG !== 300 && q.bowlG !== 50) throw new CalcError('out-of-range', { field: 'bowlG', value: q.bowlG })
  mustBeWithin('flourMassG', q.flourMassG, { min: FLOUR_OF_BOWL.least * q.bowlG, max: FLOUR_OF_BOWL.most * q.bowlG })
  mustBeWithin('consistencyUnits', q.consistencyUnits, { min: 480, max: 520 })
  const offLineMl = ML_PER_UNIT[q.bowlG] * (q.consistencyUnits - 500)
  const { possible, usual } = ABSORPTION_PCT
  const waterForMl = (pct: number) => (pct * q.bowlG) / 100 - q.flourMassG + q.bowlG - offLineMl
  mustBeWithin('waterMl', q.waterMl, { min: waterForMl(possible.min), max: waterForMl(possible.max) })
  const absorptionPct = (100 * (q.waterMl + offLineMl + q.flourMassG - q.bowlG)) / q.bowlG
  return {
    absorptionPct,
    warnings: absorptionPct < usual.min || absorptionPct > usual.max ? ['unusual-absorption'] : [],
  }
}
