import { mustBeGiven, mustBeWithin } from '../checks'

/**
 * Reference intakes of an adult a day: kJ, kcal, g. Regulation (EU) No 1169/2011, Annex XIII, part B; as on the UK health
 * service's page. There is none for fibre.
 */
const REFERENCE_INTAKES = {
  'energy-kj': 8400,
  'energy-kcal': 2000,
  fat: 70,
  saturates: 20,
  carbohydrate: 260,
  sugars: 90,
  protein: 50,
  salt: 6,
} as const

export const INTAKE_NUTRIENTS = [
  'energy-kj',
  'energy-kcal',
  'fat',
  'saturates',
  'carbohydrate',
  'sugars',
  'protein',
  'salt',
] as const
export type IntakeNutrient = (typeof INTAKE_NUTRIENTS)[number]

const FIELDS: Record<IntakeNutrient, keyof PortionQuestion> = {
  'energy-kj': 'energyKj',
  'energy-kcal': 'energyKcal',
  fat: 'fatG',
  saturates: 'saturatesG',
  carbohydrate: 'carbohydrateG',
  sugars: 'sugarsG',
  protein: 'proteinG',
  salt: 'saltG',
}

/** Figures of 100 g, not rounded; what is not known is left out and not answered. */
export type PortionQuestion = {
  portionG: number
  energyKj?: number | undefined
  energyKcal?: number | undefined
  fatG?: number | undefined
  saturatesG?: number | undefined
  carbohydrateG?: number | undefined
  sugarsG?: number | undefined
  proteinG?: number | undefined
  saltG?: number | undefined
}

/**
 * A portion of food, and its part of an average adult's reference intake a day. A draft: 'reference intake of an average
 * adult (8400 kJ / 2000 kcal)' must stand beside such figures, and the number of portions on the package.
 * @param portionG over 0 to 10,000 g; figures of 100 g, ≥ 0, as worked out and not rounded before; at least one of them
 * @returns in the order of the declaration; g, kJ or kcal in the portion, and % of the intake
 * @throws CalcError 'not-finite' | 'out-of-range'; 'not-possible' with reason 'not-given' when no figure is there
 * Source: Regulation (EU) No 1169/2011, Annex XIII, part B, and Articles 32 and 33.
 * @example 50 g at 6.1203 g of fat in 100 g: 3.06 g, 4.37 %
 */
export function portionIntake(q: PortionQuestion): {
  isDraft: true
  rows: { nutrient: IntakeNutrient; inPortion: number; intakePct: number }[]
  cautions: ('draft-for-competent-person' | 'local-rules-decide' | 'average-adult')[]
} {
  const portionG = mustBeWithin('portionG', q.portionG, { over: 0, max: 10_000 })
  const rows = INTAKE_NUTRIENTS.flatMap((nutrient) => {
    const field = FIELDS[nutrient]
    const value = q[field]
    if (value === undefined) return []
    const most = nutrient === 'energy-kj' ? 3700 : nutrient === 'energy-kcal' ? 900 : 100
    const inPortion = (mustBeWithin(field, value, { min: 0, max: most }) * portionG) / 100
    return [{ nutrient, inPortion, intakePct: (100 * inPortion) / REFERENCE_INTAKES[nutrient] }]
  })
  mustBeGiven('energyKj', rows[0])
  return { isDraft: true, rows, cautions: ['draft-for-competent-person', 'local-rules-decide', 'average-adult'] }
}
