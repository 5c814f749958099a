import type { TemperatureUnits } from './temperature-difference'

/** A temperature in °C as a number in the bakery's degrees. @example temperatureInUnit(25, 'fahrenheit') // 77 */
export function temperatureInUnit(tempC: number, units: TemperatureUnits): number {
  return units === 'celsius' ? tempC : (tempC * 9) / 5 + 32
}

/** A temperature in °C from a number in the bakery's degrees. @example temperatureFromUnit(77, 'fahrenheit') // 25 */
export function temperatureFromUnit(temp: number, units: TemperatureUnits): number {
  return units === 'celsius' ? temp : ((temp - 32) * 5) / 9
}
