import { differenceFToC } from '../../calc/temperature/temperature-difference'

export type TemperatureUnits = 'celsius' | 'fahrenheit'

/** The sign of a bakery's degrees, for labels and behind numbers. */
export const degreeSign = { celsius: '°C', fahrenheit: '°F' } as const satisfies Record<TemperatureUnits, string>

/** A difference of temperature, in °C, from a number in the bakery's degrees. @throws CalcError 'not-finite' */
export function differenceFromUnit(difference: number, units: TemperatureUnits): number {
  return units === 'celsius' ? difference : differenceFToC(difference)
}

/** A difference of temperature in °C as a number in the bakery's degrees: × 9/5, without the 32 that a reading takes. */
export function differenceInUnit(differenceC: number, units: TemperatureUnits): number {
  return units === 'celsius' ? differenceC : (differenceC * 9) / 5
}
