import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { YEAST_MAXIMUM_TEMP_C, YEAST_MINIMUM_TEMP_C } from './constants'
import { speedBy, SPEED_RULE_NAMES, type SpeedRule } from './speed-rules'
import { tempWarnings, type TempWarning } from './temp-warnings'
import { timeIntegralMin, type TempReading } from './time-integral'

export type EquivalentMinutes = {
  rules: { rule: SpeedRule; minutes: number }[]
  /** Least and most over the rules: what is known is the range, not one time. */
  leastMin: number
  mostMin: number
  warnings: TempWarning[]
}

/** Where a rule bends, the integral is taken apart. */
const CORNERS_C: Record<SpeedRule, number[]> = {
  'q10-of-2': [],
  'ten-pct-per-degree': [],
  'cardinal-temperatures': [YEAST_MINIMUM_TEMP_C, YEAST_MAXIMUM_TEMP_C],
}

/**
 * Minutes at a reference temperature that ferment as much as a record of dough temperatures did: ∫ r(T(t)) dt / r(T_ref),
 * with straight lines between readings. It is worked out by each rule in use, because they disagree: Q10 of 2, the trade's
 * 10 % per °C, and growth by cardinal temperatures. Within 1e-6 of each rule's integral.
 * @param readings of the dough, not of the cabinet; at least two, minutes rising, −20 to under 45.4 °C: above that yeast
 *   dies, and the record ends before
 * @param referenceTempC between the yeast's minimum 2.8 and maximum 45.4 °C
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range'
 * Source: see speedBy.
 * @example 60 minutes at 27 °C are 45.1 to 55.4 minutes at 30 °C
 */
export function equivalentMinutes(q: { readings: readonly TempReading[]; referenceTempC: number }): EquivalentMinutes {
  mustBeWithin('referenceTempC', q.referenceTempC, { over: YEAST_MINIMUM_TEMP_C, under: YEAST_MAXIMUM_TEMP_C })
  const { readings } = q
  readings.forEach(({ doughTempC }, i) =>
    mustBeWithin(`readings[${i}].doughTempC`, doughTempC, { min: -20, under: YEAST_MAXIMUM_TEMP_C }),
  )
  const rules = SPEED_RULE_NAMES.map((rule) => {
    const rate = (tempC: number) => speedBy(rule, tempC) / speedBy(rule, q.referenceTempC)
    const minutes = timeIntegralMin({ readings, rate, cornersC: CORNERS_C[rule] })
    if (!Number.isFinite(minutes)) throw new CalcError('not-finite', { field: 'readings', value: String(minutes) })
    return { rule, minutes }
  })
  const minutes = rules.map((one) => one.minutes)
  const tempsC = readings.map(({ doughTempC }) => doughTempC)
  const [coldestC, warmestC] = [tempsC.reduce((a, b) => Math.min(a, b)), tempsC.reduce((a, b) => Math.max(a, b))]
  return {
    rules,
    leastMin: Math.min(...minutes),
    mostMin: Math.max(...minutes),
    warnings: tempWarnings(coldestC, warmestC),
  }
}
