import { expect, test } from 'vitest'
import { nutritionPer100g } from '@/lib/calc/label/nutrition-per-100g'

const stated = {
  fatPct: 1,
  saturatesPct: 0.2,
  carbohydratePct: 70,
  sugarsPct: 1,
  fibrePct: 4,
  proteinPct: 12,
  sodiumMgPer100g: 0,
}
const none = {
  fatPct: 0,
  saturatesPct: 0,
  carbohydratePct: 0,
  sugarsPct: 0,
  fibrePct: 0,
  proteinPct: 0,
  sodiumMgPer100g: 0,
}
const q = {
  lines: [
    { name: 'flour', massG: 1000, ...stated },
    { name: 'water', massG: 650, ...none },
    { name: 'salt', massG: 20, ...none, sodiumMgPer100g: 40_000 },
  ],
  carbohydrateIncludesFibre: true,
  bakedMassG: 1450,
}
const figure = (result: ReturnType<typeof nutritionPer100g>, nutrient: string) =>
  result.rows.find((row) => row.nutrient === nutrient)

test('what was weighed in is in the bread, and bake loss makes it more in 100 g', () => {
  const result = nutritionPer100g(q)
  expect(figure(result, 'protein')?.per100g).toBeCloseTo(12_000 / 1450, 10)
  expect(figure(result, 'carbohydrate')?.per100g).toBeCloseTo(66_000 / 1450, 10)
  expect(figure(result, 'salt')?.per100g).toBeCloseTo((20 * 0.4 * 2.5 * 100) / 1450, 10)
  const moist = nutritionPer100g({ ...q, bakedMassG: 1670 })
  expect(figure(moist, 'energy-kj')!.per100g * 1670).toBeCloseTo(figure(result, 'energy-kj')!.per100g * 1450, 6)
  expect(result.cautions).toEqual(['draft-for-competent-person', 'local-rules-decide', 'fermentation-not-counted'])
})

test('a table without fibre in its carbohydrate is taken as it is', () =>
  expect(figure(nutritionPer100g({ ...q, carbohydrateIncludesFibre: false }), 'carbohydrate')?.per100g).toBeCloseTo(
    70_000 / 1450,
    10,
  ))

test('what is not stated is named and its figures are called incomplete, never nought in silence', () => {
  const { fibrePct: _fibre, ...noFibre } = stated
  const result = nutritionPer100g({ ...q, lines: [{ name: 'flour', massG: 1000, ...noFibre }, ...q.lines.slice(1)] })
  expect(result.notStated).toEqual([
    { name: 'flour', nutrient: 'carbohydrate' },
    { name: 'flour', nutrient: 'fibre' },
  ])
  expect(result.rows.filter(({ isComplete }) => !isComplete).map(({ nutrient }) => nutrient)).toEqual([
    'energy-kj',
    'energy-kcal',
    'carbohydrate',
    'fibre',
  ])
  expect(result.cautions).toContain('not-everything-stated')
})

test('no lines, shares beyond the whole, more bread than dough and impossibly little bread are refused', () => {
  expect(() => nutritionPer100g({ ...q, lines: [] })).toThrow(expect.objectContaining({ code: 'empty' }))
  expect(() => nutritionPer100g({ ...q, lines: [{ name: 'x', massG: 10, fatPct: 101 }], bakedMassG: 9 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'lines[0].fatPct' }) }),
  )
  expect(() => nutritionPer100g({ ...q, bakedMassG: 1671 })).toThrow(expect.objectContaining({ code: 'out-of-range' }))
  expect(() => nutritionPer100g({ ...q, bakedMassG: 500 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ reason: 'baked-mass-too-small' }) }),
  )
})

test('what no food can state is said by its line, and what official tables allow themselves is not', () => {
  const warned = (change: object, includesFibre = true) =>
    nutritionPer100g({
      ...q,
      carbohydrateIncludesFibre: includesFibre,
      lines: [{ name: 'butter', massG: 100, ...none, fatPct: 82, ...change }, ...q.lines],
    }).warnings
  expect(warned({ saturatesPct: 51 })).toEqual([])
  expect(warned({ saturatesPct: 82.7 })).toEqual([])
  expect(warned({ saturatesPct: 83 })).toEqual([{ code: 'saturates-above-fat', name: 'butter' }])
  expect(warned({ sugarsPct: 3 })).toEqual([{ code: 'sugars-above-carbohydrate', name: 'butter' }])
  // Sugars are no part of the fibre that a table counts as carbohydrate.
  expect(warned({ carbohydratePct: 10, fibrePct: 8, sugarsPct: 5 })).toEqual([
    { code: 'sugars-above-carbohydrate', name: 'butter' },
  ])
  expect(warned({ carbohydratePct: 10, fibrePct: 8, sugarsPct: 5 }, false)).toEqual([])
  expect(warned({ fibrePct: 3 })).toEqual([{ code: 'fibre-above-carbohydrate', name: 'butter' }])
  expect(warned({ fibrePct: 3 }, false)).toEqual([])
  expect(warned({ carbohydratePct: 12, proteinPct: 9 })).toEqual([{ code: 'more-than-100', name: 'butter' }])
  expect(() => warned({ fatPct: 101 })).toThrow(expect.objectContaining({ code: 'out-of-range' }))
  // USDA SR28: whole milk (01077), light cream (01050), table salt (02047); lye, 57 % sodium by its formula.
  expect(warned({ fatPct: 3.25, carbohydratePct: 4.8, sugarsPct: 5.05, proteinPct: 3.15 })).toEqual([])
  expect(warned({ fatPct: 19.1, carbohydratePct: 2.82, sugarsPct: 3.67, proteinPct: 2.96 })).toEqual([])
  for (const sodiumMgPer100g of [38_758, 57_480]) expect(warned({ fatPct: 0, sodiumMgPer100g })).toEqual([])
})
