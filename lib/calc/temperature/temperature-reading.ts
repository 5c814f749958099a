import { mustBeWithin } from '../checks'

export type TemperatureUnit = 'celsius' | 'fahrenheit'

/** −273.15 °C is −459.67 °F. */
const ABSOLUTE_ZERO = { celsius: -273.15, fahrenheit: -459.67 } as const

/**
 * A reading of a thermometer in both units: °F = °C · 9/5 + 32. A difference takes no 32: temperatureDifference.
 * @param reading not below absolute zero
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: NIST, conversion of temperatures, t/°C = (t/°F − 32)/1.8; from memory.
 * @example 75 °F is 23.89 °C
 */
export function temperatureReading(q: { reading: number; unit: TemperatureUnit }): {
  readingTempC: number
  readingTempF: number
} {
  const { reading, unit } = q
  mustBeWithin('reading', reading, { min: ABSOLUTE_ZERO[unit] })
  return unit === 'celsius'
    ? { readingTempC: reading, readingTempF: (reading * 9) / 5 + 32 }
    : { readingTempC: ((reading - 32) * 5) / 9, readingTempF: reading }
}
