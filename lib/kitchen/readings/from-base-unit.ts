import 'server-only'
import { Decimal } from '../../calc/cost/decimal'
import { unitFactors } from './unit-factors'

/**
 * A value in a base unit, in another unit of the same kind: the other way round of `toBaseUnit`. Not rounded beyond
 * the last digit of a double.
 * @returns undefined when the unit is not one of this base unit
 * @throws Error when the value is not finite
 * @example fromBaseUnit({ value: 30, unit: '°F', baseUnit: '°C' }) // 86
 */
export function fromBaseUnit(q: { value: number; unit: string; baseUnit: string }): number | undefined {
  if (!Number.isFinite(q.value)) throw new Error(`not a finite value: ${String(q.value)}`)
  if (q.unit === q.baseUnit) return q.value
  const factor = unitFactors[q.baseUnit]?.[q.unit]
  if (!factor) return undefined
  return new Decimal(q.value)
    .times(factor.by ?? '1')
    .div(factor.times)
    .plus(factor.minus ?? '0')
    .toNumber()
}
