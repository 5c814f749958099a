import { mustBeWithin } from '../checks'

export const TOLERANCE_NUTRIENTS = ['fat', 'saturates', 'carbohydrate', 'sugars', 'fibre', 'protein', 'salt'] as const
export type ToleranceNutrient = (typeof TOLERANCE_NUTRIENTS)[number]

/** Below `small` a number of grams either way, above it a fifth, from `large` a number of grams again. */
type Tolerance = { small: number; smallG: number; large: number; largeG: number }

const MACRO: Tolerance = { small: 10, smallG: 2, large: 40, largeG: 8 }
const FAT: Tolerance = { small: 10, smallG: 1.5, large: 40, largeG: 8 }
const SATURATES: Tolerance = { small: 4, smallG: 0.8, large: Infinity, largeG: Infinity }
const SALT: Tolerance = { small: 1.25, smallG: 0.375, large: Infinity, largeG: Infinity }

const TOLERANCES: Record<ToleranceNutrient, Tolerance> = {
  fat: FAT,
  saturates: SATURATES,
  carbohydrate: MACRO,
  sugars: MACRO,
  fibre: MACRO,
  protein: MACRO,
  salt: SALT,
}
const FIFTH = 0.2

/**
 * Whether what a laboratory found lies within the EU's tolerance about what the label declares, in 100 g; the uncertainty of the
 * measurement is in it. Guidance and not law: whoever controls may see it otherwise.
 * @param declaredG, measuredG in 100 g of food, 0 to 100 g
 * @returns the bounds, g, the lower never below nought
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: European Commission, Guidance on tolerances for nutrient values, December 2012, table 1: carbohydrate, sugars,
 *   protein, fibre and fat below 10 g as quoted on the web; the rest from memory.
 * @example protein 8 g: 6 to 10 g; carbohydrate 45 g: 37 to 53 g
 */
export function declaredTolerance(q: { nutrient: ToleranceNutrient; declaredG: number; measuredG: number }): {
  leastG: number
  mostG: number
  isWithin: boolean
} {
  const declaredG = mustBeWithin('declaredG', q.declaredG, { min: 0, max: 100 })
  const measuredG = mustBeWithin('measuredG', q.measuredG, { min: 0, max: 100 })
  const { small, smallG, large, largeG } = TOLERANCES[q.nutrient]
  const offG = declaredG < small ? smallG : declaredG > large ? largeG : FIFTH * declaredG
  const leastG = Math.max(0, declaredG - offG)
  const mostG = declaredG + offG
  return { leastG, mostG, isWithin: measuredG >= leastG && measuredG <= mostG }
}
