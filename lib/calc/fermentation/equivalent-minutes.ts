import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import {
  ACTIVITY_RISE_PCT_PER_C,
  YEAST_MAXIMUM_TEMP_C,
  YEAST_MINIMUM_TEMP_C,
  YEAST_OPTIMUM_TEMP_C,
} from './constants'
import { relativeRateShare } from './relative-rate'
import { timeIntegralMin, type TempReading } from './time-integral'

export type EquivalentMinutes = {
  rules: { rule: 'cardinal-temperatures' | 'ten-pct-per-degree'; minutes: number }[]
  /** Least and most over the rules: what is known is the range, not one time. */
  leastMin: number
  mostMin: number
  warnings: ('warmer-than-optimum' | 'colder-than-minimum')[]
}

const yeast = {
  minimumTempC: YEAST_MINIMUM_TEMP_C,
  optimumTempC: YEAST_OPTIMUM_TEMP_C,
  maximumTempC: YEAST_MAXIMUM_TEMP_C,
}

/**
 * Minutes at a reference temperature that ferment as much as a record of dough temperatures did: ∫ r(T(t)) dt / r(T_ref),
 * with straight lines between readings. It is worked out by each rule in use, because they disagree: growth by cardinal
 * temperatures, and the trade's 10 % per °C. Within 1e-6 of each rule's integral.
 * @param readings of the dough, not of the cabinet; at least two, minutes rising, −20 to 100 °C
 * @param referenceTempC between the yeast's minimum 2.8 and maximum 45.4 °C
 * @returns 'warmer-than-optimum' when a reading lies above 32.3 °C: the 10 % rule no longer holds there;
 *   'colder-than-minimum' when one lies below 2.8 °C
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range'
 * Source: Rosso et al. 1993 with cardinal temperatures of Salvado et al. 2011; rule of thumb, US baking trade magazine.
 * @example 60 minutes at 27 °C are 45.1 to 55.4 minutes at 30 °C
 */
export function equivalentMinutes(q: { readings: readonly TempReading[]; referenceTempC: number }): EquivalentMinutes {
  mustBeWithin('referenceTempC', q.referenceTempC, { over: yeast.minimumTempC, under: yeast.maximumTempC })
  const growth = (tempC: number) => relativeRateShare({ tempC, ...yeast })
  const tenPct = (tempC: number) => (1 + ACTIVITY_RISE_PCT_PER_C / 100) ** (tempC - q.referenceTempC)
  const { readings } = q
  const byGrowthMin = timeIntegralMin({ readings, rate: growth, cornersC: [yeast.minimumTempC, yeast.maximumTempC] })
  const rules: EquivalentMinutes['rules'] = [
    { rule: 'cardinal-temperatures', minutes: byGrowthMin / growth(q.referenceTempC) },
    { rule: 'ten-pct-per-degree', minutes: timeIntegralMin({ readings, rate: tenPct, cornersC: [] }) },
  ]
  rules.forEach(({ minutes }) => {
    if (!Number.isFinite(minutes)) throw new CalcError('not-finite', { field: 'readings', value: String(minutes) })
  })
  const minutes = rules.map((one) => one.minutes)
  const warnings: EquivalentMinutes['warnings'] = []
  if (readings.some(({ doughTempC }) => doughTempC > yeast.optimumTempC)) warnings.push('warmer-than-optimum')
  if (readings.some(({ doughTempC }) => doughTempC < yeast.minimumTempC)) warnings.push('colder-than-minimum')
  return { rules, leastMin: Math.min(...minutes), mostMin: Math.max(...minutes), warnings }
}
