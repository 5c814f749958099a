/** How a bakery weighs. */
export type MassUnits = 'metric' | 'ounces'
export type MassUnit = 'g' | 'kg' | 'oz' | 'lb'

/**
 * Grams in one of each unit, exact. An avoirdupois ounce is 28.349523125 g, and 16 of them are a pound.
 * Source: NIST Handbook 44, Appendix C, units of mass.
 */
export const gramsPerUnit = { g: 1, kg: 1000, oz: 28.349523125, lb: 453.59237 } as const satisfies Record<
  MassUnit,
  number
>

/** The unit for what is weighed on a small scale: doses, a scale's steps. */
export function smallMassUnit(units: MassUnits): MassUnit {
  return units === 'metric' ? 'g' : 'oz'
}

/** The unit for sacks, doughs and prices. */
export function largeMassUnit(units: MassUnits): MassUnit {
  return units === 'metric' ? 'kg' : 'lb'
}

/**
 * A mass in grams from a number in a unit, not rounded beyond the last digit of a double.
 * @throws RangeError when the value is not finite
 * @example massFromUnit(50, 'lb') // 22679.6185
 */
export function massFromUnit(value: number, unit: MassUnit): number {
  mustBeFinite(value)
  // As an exponent and not multiplied: 1.005 kg are 1005 g, but 1.005 * 1000 is a little less.
  return unit === 'kg' ? shiftThousand(value) : value * gramsPerUnit[unit]
}

/**
 * A mass in grams as a number in a unit, not rounded beyond the last digit of a double.
 * @throws RangeError when the value is not finite
 * @example massInUnit(453.59237, 'oz') // 16
 */
export function massInUnit(massG: number, unit: MassUnit): number {
  return mustBeFinite(massG) / gramsPerUnit[unit]
}

function shiftThousand(value: number): number {
  const [digits, exponent = '0'] = String(value).split('e')
  return Number(`${digits}e${Number(exponent) + 3}`)
}

function mustBeFinite(value: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`not a finite mass: ${String(value)}`)
  return value
}
