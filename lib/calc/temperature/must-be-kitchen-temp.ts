import { mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { temperatureReading, type TemperatureUnit } from './temperature-reading'

/**
 * Demands a temperature that the thing can have in a bakery, in the unit that all are in. What would be right in the
 * other unit is most likely meant in it, and that is said.
 * @param value in `unit`; boundsC in °C
 * @throws CalcError 'not-finite'; 'out-of-range', with reason 'units-mixed' when the value fits in the other unit
 */
export function mustBeKitchenTemp(
  field: string,
  value: number,
  q: { unit: TemperatureUnit; boundsC: { min: number; max: number } },
): number {
  mustBeWithin(field, value)
  const { min, max } = q.boundsC
  const isWithin = (unit: TemperatureUnit) => {
    const tempC = unit === 'celsius' ? value : ((value - 32) * 5) / 9
    return tempC >= min && tempC <= max
  }
  if (isWithin(q.unit)) return value
  const [low, high] = [min, max].map((boundC) =>
    q.unit === 'celsius' ? boundC : temperatureReading({ reading: boundC, unit: 'celsius' }).readingTempF,
  )
  const isOther = isWithin(q.unit === 'celsius' ? 'fahrenheit' : 'celsius')
  throw new CalcError('out-of-range', {
    field,
    value,
    min: low,
    max: high,
    ...(isOther ? { reason: 'units-mixed' } : {}),
  })
}
