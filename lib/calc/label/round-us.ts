import { mustBeWithin } from '../checks'

export const US_NUTRIENTS = [
  'calories',
  'total-fat',
  'saturated-fat',
  'cholesterol',
  'sodium',
  'total-carbohydrate',
  'fibre',
  'sugars',
  'protein',
] as const
export type UsNutrient = (typeof US_NUTRIENTS)[number]

/** Below `from` it says 0 or 'less than'; then steps, each up to and with `to`. */
type UsRounding = { zeroBelow: number; lessThanBelow: number | null; steps: readonly { to: number; step: number }[] }

const FATS: UsRounding = {
  zeroBelow: 0.5,
  lessThanBelow: null,
  steps: [
    { to: 5, step: 0.5 },
    { to: Infinity, step: 1 },
  ],
}
const GRAMS: UsRounding = { zeroBelow: 0.5, lessThanBelow: 1, steps: [{ to: Infinity, step: 1 }] }
const RULES: Record<UsNutrient, UsRounding> = {
  calories: {
    zeroBelow: 5,
    lessThanBelow: null,
    steps: [
      { to: 50, step: 5 },
      { to: Infinity, step: 10 },
    ],
  },
  'total-fat': FATS,
  'saturated-fat': FATS,
  cholesterol: { zeroBelow: 2, lessThanBelow: 5, steps: [{ to: Infinity, step: 5 }] },
  sodium: {
    zeroBelow: 5,
    lessThanBelow: null,
    steps: [
      { to: 140, step: 5 },
      { to: Infinity, step: 10 },
    ],
  },
  'total-carbohydrate': GRAMS,
  fibre: GRAMS,
  sugars: GRAMS,
  protein: GRAMS,
}

/**
 * A figure of the nutrition facts of the United States, for a serving, rounded. A draft for a competent person.
 * @param value kcal, g or (cholesterol, sodium) mg in a serving, 0 to 100,000, not rounded before
 * @returns the rounded figure, a half up; 'less-than' when 'less than' that figure is to be said
 * @throws CalcError 'not-finite' | 'out-of-range'
 * Source: 21 CFR 101.9(c), as in the FDA Food Labeling Guide, appendix H, 2009; cholesterol from memory.
 * @example 143.81 kcal: 140; 3.06 g of fat: 3; 0.81 g of fibre: less than 1
 */
export function roundUs(q: { nutrient: UsNutrient; value: number }): {
  roundedValue: number
  say: 'zero' | 'less-than' | 'figure'
} {
  const value = mustBeWithin('value', q.value, { min: 0, max: 100_000 })
  const { zeroBelow, lessThanBelow, steps } = RULES[q.nutrient]
  if (value < zeroBelow) return { roundedValue: 0, say: 'zero' }
  if (lessThanBelow !== null && value < lessThanBelow) return { roundedValue: lessThanBelow, say: 'less-than' }
  const step = steps.find(({ to }) => value <= to)?.step ?? 1
  return { roundedValue: step * Math.round(Number((value / step).toPrecision(14))), say: 'figure' }
}
