import { mustBeWithin } from '../checks'
import { YEAST_MAXIMUM_TEMP_C, YEAST_MINIMUM_TEMP_C } from './constants'
import { speedBy, SPEED_RULE_NAMES, type SpeedRule } from './speed-rules'
import { tempWarnings, type TempWarning } from './temp-warnings'

export type MinutesWhileCooling = {
  endTempC: number
  rules: { rule: SpeedRule; minutes: number }[]
  leastMin: number
  mostMin: number
  warnings: TempWarning[]
}

/** Strips of Simpson's rule: finer than the corner of the model at 2.8 °C needs for a part in 10,000. */
const STRIPS = 20_000

/**
 * Minutes at a reference temperature that ferment as much as a dough does while it cools, or warms, towards its cabinet:
 * T(t) = T_cabinet + (T_start − T_cabinet)·exp(−t / τ), by three rules (see speedBy). A large piece cools slowly, and most
 * of what happens in a retarder happens before it is cold. Within 1e-4 of each rule's integral.
 * @param startTempC, cabinetTempC −5 to 45 °C; @param timeConstantMin τ, 1 to 2000 min: after it 63 % of the way is gone
 * @param minutes over 0 to 20,160; @param referenceTempC between 2.8 and 45.4 °C
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: Newton's law of cooling; composite Simpson's rule; rules of speedBy.
 * @example 26 to 4 °C with 90 min, 12 h, at 27 °C: 65.6 to 189.6 min
 */
export function minutesWhileCooling(q: {
  startTempC: number
  cabinetTempC: number
  timeConstantMin: number
  minutes: number
  referenceTempC: number
}): MinutesWhileCooling {
  mustBeWithin('startTempC', q.startTempC, { min: -5, max: 45 })
  mustBeWithin('cabinetTempC', q.cabinetTempC, { min: -5, max: 45 })
  mustBeWithin('timeConstantMin', q.timeConstantMin, { min: 1, max: 2000 })
  mustBeWithin('minutes', q.minutes, { over: 0, max: 20_160 })
  mustBeWithin('referenceTempC', q.referenceTempC, { over: YEAST_MINIMUM_TEMP_C, under: YEAST_MAXIMUM_TEMP_C })
  const tempAt = (min: number) => q.cabinetTempC + (q.startTempC - q.cabinetTempC) * Math.exp(-min / q.timeConstantMin)
  const rules = SPEED_RULE_NAMES.map((rule) => ({
    rule,
    minutes: integral((min) => speedBy(rule, tempAt(min)), q.minutes) / speedBy(rule, q.referenceTempC),
  }))
  const minutes = rules.map((one) => one.minutes)
  const endTempC = tempAt(q.minutes)
  return {
    endTempC,
    rules,
    leastMin: Math.min(...minutes),
    mostMin: Math.max(...minutes),
    warnings: tempWarnings(Math.min(q.startTempC, endTempC), Math.max(q.startTempC, endTempC)),
  }
}

function integral(rate: (min: number) => number, minutes: number): number {
  const width = minutes / STRIPS
  let sum = 0
  for (let i = 0; i < STRIPS; i++) sum += rate(i * width) + 4 * rate((i + 0.5) * width) + rate((i + 1) * width)
  return (sum * width) / 6
}
