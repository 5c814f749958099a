import { mustBeWithin } from '../checks'
import { YEAST_MAXIMUM_TEMP_C, YEAST_MINIMUM_TEMP_C } from './constants'
import { speedBy, SPEED_RULE_NAMES, type SpeedRule } from './speed-rules'
import { tempWarnings, type TempWarning } from './temp-warnings'

export type MinutesAtTemperature = {
  rules: { rule: SpeedRule; minutes: number; yeastFactor: number }[]
  leastMin: number
  mostMin: number
  /** Yeast for the same time at the new temperature, as so many times the yeast of before. */
  leastYeastFactor: number
  mostYeastFactor: number
  warnings: TempWarning[]
}

const ALIVE_C = { over: YEAST_MINIMUM_TEMP_C, under: YEAST_MAXIMUM_TEMP_C }

/**
 * Minutes at another dough temperature that ferment as much, and the yeast that would keep the time, by three rules:
 * Q10 of 2, the trade's 10 % for one °C, and growth by cardinal temperatures. What is known is the range, not one number;
 * below about 8 °C the rules differ up to forty-fold, and that is said.
 * @param minutes over 0 to 20,160; @param tempC, otherTempC of the dough, between 2.8 and 45.4 °C
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: see speedBy.
 * @example 75 min at 26 °C are 93.7 to 109.8 min at 22 °C
 */
export function minutesAtTemperature(q: { minutes: number; tempC: number; otherTempC: number }): MinutesAtTemperature {
  mustBeWithin('minutes', q.minutes, { over: 0, max: 20_160 })
  mustBeWithin('tempC', q.tempC, ALIVE_C)
  mustBeWithin('otherTempC', q.otherTempC, ALIVE_C)
  const rules = SPEED_RULE_NAMES.map((rule) => {
    const yeastFactor = speedBy(rule, q.tempC) / speedBy(rule, q.otherTempC)
    return { rule, minutes: q.minutes * yeastFactor, yeastFactor }
  })
  const minutes = rules.map((one) => one.minutes)
  const factors = rules.map((one) => one.yeastFactor)
  return {
    rules,
    leastMin: Math.min(...minutes),
    mostMin: Math.max(...minutes),
    leastYeastFactor: Math.min(...factors),
    mostYeastFactor: Math.max(...factors),
    warnings: tempWarnings(Math.min(q.tempC, q.otherTempC), Math.max(q.tempC, q.otherTempC)),
  }
}
