import { Decimal } from '../../calc/cost/decimal'

/** How a bakery weighs. */
export type MassUnits = 'metric' | 'ounces'
export type MassUnit = 'g' | 'kg' | 'oz' | 'lb'

/**
 * Grams in one of each unit. An avoirdupois ounce is exactly 28.349523125 g, and 16 of them are a pound.
 * Source: NIST Handbook 44, Appendix C, units of mass (exact values).
 */
export const gramsPerUnit = { g: '1', kg: '1000', oz: '28.349523125', lb: '453.59237' } as const satisfies Record<MassUnit, string>

/** The unit for what is weighed on a small scale: doses, a scale's steps. */
export function smallMassUnit(units: MassUnits): MassUnit {
  return units === 'metric' ? 'g' : 'oz'
}

/** The unit for sacks, doughs and prices. */
export function largeMassUnit(units: MassUnits): MassUnit {
  return units === 'metric' ? 'kg' : 'lb'
}

/**
 * A mass in grams from a number in a unit, rounded once, to the nearest double.
 * @throws Error when the value is not finite
 * @example massFromUnit(50, 'lb') // 22679.6185
 */
export function massFromUnit(value: number, unit: MassUnit): number {
  return mustBeFinite(new Decimal(value).times(gramsPerUnit[unit]).toNumber())
}

/**
 * A mass in grams as a number in a unit, rounded once, to the nearest double.
 * @throws Error when the value is not finite
 * @example massInUnit(453.59237, 'oz') // 16
 */
export function massInUnit(massG: number, unit: MassUnit): number {
  return mustBeFinite(new Decimal(massG).dividedBy(gramsPerUnit[unit]).toNumber())
}

function mustBeFinite(value: number): number {
  if (!Number.isFinite(value)) throw new RangeError(`not a finite mass: ${String(value)}`)
  return value
}
