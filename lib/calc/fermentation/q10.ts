import { mustBeWithin } from '../checks'
import { CalcError } from '../error'

/**
 * How many times faster at 10 °C more, from rates at two temperatures: Q10 = (r₂/r₁)^(10/(T₂ − T₁)). Times to the same
 * state go in as rates 1/t. It holds between those temperatures only.
 * @param firstRate, secondRate in one unit, > 0
 * @param firstTempC, secondTempC −20 to 100 °C, at least 0.1 °C apart
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'same-temperature'
 * Source: definition.
 * @example 10 % more for one °C: 2.594
 */
export function q10(q: { firstRate: number; firstTempC: number; secondRate: number; secondTempC: number }): number {
  mustBeWithin('firstRate', q.firstRate, { over: 0 })
  mustBeWithin('secondRate', q.secondRate, { over: 0 })
  mustBeWithin('firstTempC', q.firstTempC, { min: -20, max: 100 })
  mustBeWithin('secondTempC', q.secondTempC, { min: -20, max: 100 })
  const apartC = q.secondTempC - q.firstTempC
  if (Math.abs(apartC) < 0.1) {
    throw new CalcError('not-possible', { field: 'secondTempC', value: q.secondTempC, reason: 'same-temperature' })
  }
  return mustBeWithin('secondRate', Math.exp((10 / apartC) * Math.log(q.secondRate / q.firstRate)))
}
