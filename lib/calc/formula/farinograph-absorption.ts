import { mustBeWithin } from '../checks'
import { CalcError } from '../error'

/** mL of water per farinograph unit off the 500 line; ISO 5530-1 (from memory). */
const ML_PER_UNIT = { 300: 0.096, 50: 0.016 } as const

/**
 * Water absorption at 14 % moisture basis from a farinograph run, %, with the correction to 500 units.
 * @param bowlG 300 or 50
 * @param flourMassG flour put in (equal to the bowl's mass at 14 % moisture), g, > 0
 * @param waterMl water put in, mL, > 0
 * @param consistencyUnits consistency reached; 500 leaves the water as it is; ISO 5530-1 corrects from 480 to 520
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: AACC 54-21 and ISO 5530-1, formulas from memory.
 * @example bowl 300, 294.5 g, 183.2 mL at 500 units: 59.233 %
 */
export function farinographAbsorptionPct(q: {
  bowlG: 300 | 50
  flourMassG: number
  waterMl: number
  consistencyUnits: number
}): number {
  if (q.bowlG !== 300 && q.bowlG !== 50) throw new CalcError('out-of-range', { field: 'bowlG', value: q.bowlG })
  mustBeWithin('flourMassG', q.flourMassG, { over: 0 })
  mustBeWithin('waterMl', q.waterMl, { over: 0 })
  mustBeWithin('consistencyUnits', q.consistencyUnits, { min: 480, max: 520 })
  const correctedMl = q.waterMl + ML_PER_UNIT[q.bowlG] * (q.consistencyUnits - 500)
  return (100 * (correctedMl + q.flourMassG - q.bowlG)) / q.bowlG
}
