import 'server-only'
import { Decimal } from '../../calc/cost/decimal'
import { unitFactors } from './unit-factors'

/**
 * A number as entered, in the measure's base unit. The factors are exact and multiplied as decimals, so that 1.005 kg
 * are 1005 g and not a little less.
 * @param number plain decimal text: '1234.5'
 * @returns undefined when the unit is not one of this base unit
 * @throws Error when the text is no number: read it with `readEnteredValue` first
 * Source: see unit-factors.
 * @example toBaseUnit({ number: '86', unit: '°F', baseUnit: '°C' }) // 30
 */
export function toBaseUnit(q: { number: string; unit: string; baseUnit: string }): number | undefined {
  const factor = q.unit === q.baseUnit ? { times: '1' } : unitFactors[q.baseUnit]?.[q.unit]
  if (!factor) return undefined
  const { times, by = '1', minus = '0' } = { by: undefined, minus: undefined, ...factor }
  return new Decimal(q.number).minus(minus).times(times).div(by).toNumber()
}
