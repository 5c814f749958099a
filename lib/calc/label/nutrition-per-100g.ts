import { mustBeWithin, mustHaveAtLeast } from '../checks'
import { CalcError } from '../error'
import { energy } from './energy'
import { roundDeclared, type DeclaredNutrient } from './round-declared'
import { saltFromSodiumG } from './salt-from-sodium'
import type { LabelCaution } from './types'

/** An ingredient as weighed; what is not stated is left out or null, never nought. */
export type NutritionLine = {
  name: string
  massG: number
  fatPct?: number | null
  saturatesPct?: number | null
  carbohydratePct?: number | null
  sugarsPct?: number | null
  fibrePct?: number | null
  proteinPct?: number | null
  sodiumMgPer100g?: number | null
}

type Weighed = 'fat' | 'saturates' | 'carbohydrate' | 'sugars' | 'fibre' | 'protein' | 'salt'

export type NutritionPer100g = {
  isDraft: true
  rows: {
    nutrient: DeclaredNutrient
    per100g: number
    roundedValue: number
    isNegligible: boolean
    isComplete: boolean
  }[]
  /** Lines that do not state a nutrient: its figure is then a lower bound. */
  notStated: { name: string; nutrient: Weighed }[]
  /** What a line states that cannot be, beyond what official tables allow themselves. */
  warnings: { code: NutritionWarning; name: string }[]
  cautions: LabelCaution[]
}

export const NUTRITION_WARNINGS = [
  'saturates-above-fat',
  'sugars-above-carbohydrate',
  'fibre-above-carbohydrate',
  'more-than-100',
] as const
export type NutritionWarning = (typeof NUTRITION_WARNINGS)[number]

/**
 * Parts that were found apart may exceed their whole by as much as a figure may be off the declared one, below 10 g (fat: 4 g):
 * European Commission, guidance on tolerances of December 2012, saturates from memory. Light cream has 3.67 g of sugars in
 * 2.82 g of carbohydrate (USDA SR28, row 01050).
 */
const TOLERANCE_G = { saturates: 0.8, sugars: 2, fibre: 2, sum: 2 } as const

/**
 * Nutrition of 100 g of bread from what was weighed in, after bake loss: all that is lost counts as water. What yeast
 * eats is not taken off.
 * @param lines at least one; masses g ≥ 0, compositions in % (sodium mg in 100 g), each ≥ 0 and at most 100 %
 * @param carbohydrateIncludesFibre true for tables 'by difference', as most are: fibre is then taken off, as the EU has it
 * @param bakedMassG all bread of the batch, cooled, g, > 0, at most what was weighed in
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range'; 'not-possible' with reason 'baked-mass-too-small' when more
 *   than 100 g would be in 100 g
 * Source: Regulation (EU) No 1169/2011, Articles 30 and 31, Annexes I, XIV and XV; mass balance.
 */
export function nutritionPer100g(q: {
  lines: readonly NutritionLine[]
  carbohydrateIncludesFibre: boolean
  bakedMassG: number
}): NutritionPer100g {
  mustHaveAtLeast('lines', q.lines, 1)
  const totals: Record<Weighed, number> = {
    fat: 0,
    saturates: 0,
    carbohydrate: 0,
    sugars: 0,
    fibre: 0,
    protein: 0,
    salt: 0,
  }
  const notStated: NutritionPer100g['notStated'] = []
  const warnings: NutritionPer100g['warnings'] = []
  let weighedG = 0
  q.lines.forEach((line, i) => {
    weighedG += mustBeWithin(`lines[${i}].massG`, line.massG, { min: 0 })
    const contents = contentsOf(line, `lines[${i}]`, q.carbohydrateIncludesFibre)
    warnings.push(...warningsOf(line, q.carbohydrateIncludesFibre).map((code) => ({ code, name: line.name })))
    for (const nutrient of Object.keys(totals) as Weighed[]) {
      const pct = contents[nutrient]
      if (pct !== null) totals[nutrient] += (pct / 100) * line.massG
      else if (line.massG > 0) notStated.push({ name: line.name, nutrient })
    }
  })
  mustBeWithin('bakedMassG', q.bakedMassG, { over: 0, max: weighedG })
  const per100g = (nutrient: Weighed) => (totals[nutrient] / q.bakedMassG) * 100
  const solidsPct = (['fat', 'carbohydrate', 'fibre', 'protein'] as const).reduce((sum, one) => sum + per100g(one), 0)
  if (solidsPct > 100) {
    throw new CalcError('not-possible', { field: 'bakedMassG', value: q.bakedMassG, reason: 'baked-mass-too-small' })
  }
  const { energyKj, energyKcal } = energy({
    fatG: per100g('fat'),
    carbohydrateG: per100g('carbohydrate'),
    fibreG: per100g('fibre'),
    proteinG: per100g('protein'),
    polyolsG: 0,
    alcoholG: 0,
    organicAcidsG: 0,
    salatrimsG: 0,
    erythritolG: 0,
  })
  const isStated = (nutrient: Weighed) => notStated.every((one) => one.nutrient !== nutrient)
  const isEnergyWhole = (['fat', 'carbohydrate', 'fibre', 'protein'] as const).every(isStated)
  const row = (nutrient: DeclaredNutrient, value: number, isComplete: boolean) => ({
    nutrient,
    per100g: value,
    ...roundDeclared({ nutrient, value }),
    isComplete,
  })
  const weighed = (Object.keys(totals) as Weighed[]).map((one) => row(one, per100g(one), isStated(one)))
  const cautions: LabelCaution[] = ['draft-for-competent-person', 'local-rules-decide', 'fermentation-not-counted']
  if (notStated.length > 0) cautions.push('not-everything-stated')
  return {
    isDraft: true,
    rows: [row('energy-kj', energyKj, isEnergyWhole), row('energy-kcal', energyKcal, isEnergyWhole), ...weighed],
    notStated,
    warnings,
    cautions,
  }
}

function warningsOf(line: NutritionLine, includesFibre: boolean): NutritionWarning[] {
  const isAbove = (part: number | null | undefined, whole: number | null | undefined, toleranceG: number) =>
    typeof part === 'number' && typeof whole === 'number' && part > whole + toleranceG
  const { carbohydratePct } = line
  const available =
    typeof carbohydratePct === 'number' && includesFibre
      ? Math.max(0, carbohydratePct - (line.fibrePct ?? 0))
      : carbohydratePct
  // Sodium is counted alone: in washing soda or lye it comes without chloride.
  const sodiumPct = (line.sodiumMgPer100g ?? 0) / 1000
  const sumPct =
    (line.fatPct ?? 0) +
    (carbohydratePct ?? 0) +
    (includesFibre ? 0 : (line.fibrePct ?? 0)) +
    (line.proteinPct ?? 0) +
    sodiumPct
  return [
    ...(isAbove(line.saturatesPct, line.fatPct, TOLERANCE_G.saturates) ? (['saturates-above-fat'] as const) : []),
    ...(isAbove(line.sugarsPct, available, TOLERANCE_G.sugars) ? (['sugars-above-carbohydrate'] as const) : []),
    ...(includesFibre && isAbove(line.fibrePct, carbohydratePct, TOLERANCE_G.fibre)
      ? (['fibre-above-carbohydrate'] as const)
      : []),
    ...(isAbove(sumPct, 100, TOLERANCE_G.sum) ? (['more-than-100'] as const) : []),
  ]
}

function contentsOf(line: NutritionLine, field: string, includesFibre: boolean): Record<Weighed, number | null> {
  const pct = (name: string, value: number | null | undefined, max = 100) =>
    value === null || value === undefined ? null : mustBeWithin(`${field}.${name}`, value, { min: 0, max })
  const fibre = pct('fibrePct', line.fibrePct)
  const carbohydrate = pct('carbohydratePct', line.carbohydratePct)
  const sodiumMg = pct('sodiumMgPer100g', line.sodiumMgPer100g, 100_000)
  const available =
    carbohydrate === null || !includesFibre ? carbohydrate : fibre === null ? null : Math.max(0, carbohydrate - fibre)
  return {
    fat: pct('fatPct', line.fatPct),
    saturates: pct('saturatesPct', line.saturatesPct),
    carbohydrate: available,
    sugars: pct('sugarsPct', line.sugarsPct),
    fibre,
    protein: pct('proteinPct', line.proteinPct),
    salt: sodiumMg === null ? null : saltFromSodiumG({ sodiumMg }),
  }
}
