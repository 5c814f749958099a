export type TemperatureUnits = 'celsius' | 'fahrenheit'

/** The sign of a bakery's degrees, for labels and behind numbers. */
export const degreeSign = { celsius: '°C', fahrenheit: '°F' } as const satisfies Record<TemperatureUnits, string>

/**
 * A difference of temperature in °C from a number in the bakery's degrees: × 5/9, without the 32 that a reading takes.
 * Source: NIST Special Publication 811 (2008), B.8: an interval of 1 °F is 5/9 of 1 °C.
 */
export function differenceFromUnit(difference: number, units: TemperatureUnits): number {
  return units === 'celsius' ? difference : (difference * 5) / 9
}

/** A difference of temperature in °C as a number in the bakery's degrees: × 9/5. */
export function differenceInUnit(differenceC: number, units: TemperatureUnits): number {
  return units === 'celsius' ? differenceC : (differenceC * 9) / 5
}
