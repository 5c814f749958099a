import { mustBeWithin } from '../checks'

export const DECLARED_NUTRIENTS = [
  'energy-kj',
  'energy-kcal',
  'fat',
  'saturates',
  'carbohydrate',
  'sugars',
  'fibre',
  'protein',
  'salt',
] as const

export type DeclaredNutrient = (typeof DECLARED_NUTRIENTS)[number]

/** `negligibleTo`: up to it '0' or 'less than' may stand. `coarseFrom`: from it the coarser step. */
type Rounding = { negligibleTo: number; coarseFrom: number; fineStep: number; coarseStep: number }

const MACRO: Rounding = { negligibleTo: 0.5, coarseFrom: 10, fineStep: 0.1, coarseStep: 1 }
const SATURATES: Rounding = { negligibleTo: 0.1, coarseFrom: 10, fineStep: 0.1, coarseStep: 1 }
const SALT: Rounding = { negligibleTo: 0.0125, coarseFrom: 1, fineStep: 0.01, coarseStep: 0.1 }
const ENERGY: Rounding = { negligibleTo: 0, coarseFrom: 0, fineStep: 1, coarseStep: 1 }

/**
 * A figure of the nutrition declaration, per 100 g, rounded as the Commission's guidance has it.
 * @param value g, kJ or kcal in 100 g, 0 to a million, not rounded before
 * @returns the rounded value, a half up, and whether '0' or 'less than' may stand in its place
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: European Commission, Guidance on tolerances for nutrient values, December 2012, table 4, as reproduced by a
 *   Greek food consultancy. Guidance, not law.
 * @example fat 9.46 g: 9.5; salt 1.04 g: 1.0; fat 0.4 g: negligible
 */
export function roundDeclared(q: { nutrient: DeclaredNutrient; value: number }): {
  roundedValue: number
  isNegligible: boolean
} {
  const value = mustBeWithin('value', q.value, { min: 0, max: 1e6 })
  const rule = ruleOf(q.nutrient)
  if (value <= rule.negligibleTo) return { roundedValue: 0, isNegligible: true }
  const step = value >= rule.coarseFrom ? rule.coarseStep : rule.fineStep
  const steps = Math.round(Number((value / step).toPrecision(14)))
  return { roundedValue: Number((steps * step).toPrecision(14)), isNegligible: false }
}

function ruleOf(nutrient: DeclaredNutrient): Rounding {
  switch (nutrient) {
    case 'energy-kj':
    case 'energy-kcal':
      return ENERGY
    case 'saturates':
      return SATURATES
    case 'salt':
      return SALT
    case 'fat':
    case 'carbohydrate':
    case 'sugars':
    case 'fibre':
    case 'protein':
      return MACRO
    default: {
      const never: never = nutrient
      return never
    }
  }
}
