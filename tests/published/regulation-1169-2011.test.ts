import { declaredAllergens } from '@/lib/calc/label/declared-allergens'
import { energy, type EnergyParts } from '@/lib/calc/label/energy'
import { ingredientList } from '@/lib/calc/label/ingredient-list'
import { nutritionPer100g } from '@/lib/calc/label/nutrition-per-100g'
import { saltFromSodiumG } from '@/lib/calc/label/salt-from-sodium'
import { ALLERGENS } from '@/lib/calc/label/types'
import { publishedCheck } from '@/tests/support/published-check'

const regulation = 'Regulation (EU) No 1169/2011'
const none: EnergyParts = { fatG: 0, carbohydrateG: 0, polyolsG: 0, fibreG: 0, proteinG: 0, alcoholG: 0, organicAcidsG: 0 }

for (const [part, kj, kcal] of [
  ['fatG', 37, 9],
  ['carbohydrateG', 17, 4],
  ['polyolsG', 10, 2.4],
  ['fibreG', 8, 2],
  ['proteinG', 17, 4],
  ['alcoholG', 29, 7],
  ['organicAcidsG', 13, 3],
] as const) {
  for (const [unit, expected] of [
    ['energyKj', kj],
    ['energyKcal', kcal],
  ] as const) {
    publishedCheck({
      of: ['label/energy'],
      what: `${unit} of a gram, ${part}`,
      source: `${regulation}, Annex XIV, consolidated text of 13 March 2024`,
      status: 'published',
      expected,
      got: () => energy({ ...none, [part]: 1 })[unit],
      tolerance: { relative: 1e-12 },
      why: 'the printed factor',
    })
  }
}
publishedCheck({
  id: 'P-2.7',
  of: ['label/salt-from-sodium'],
  what: 'salt on the label of 100 g of table salt, which holds 38 758 mg of sodium',
  source: `${regulation}, Annex I, 11, with USDA SR28, row 02047`,
  status: 'published inputs',
  expected: 96.9,
  got: () => saltFromSodiumG({ sodiumMg: 38_758 }),
  tolerance: { absolute: 0.05 },
  why: 'given to 0.1 g',
})
publishedCheck({
  id: 'P-2.8',
  of: ['label/nutrition-per-100g'],
  what: 'salt in 100 g, 7368.44 mg of sodium in 1848 g',
  source: `${regulation}, Annexes I and XV, with USDA SR28`,
  status: 'published inputs',
  expected: 0.997,
  got: () =>
    nutritionPer100g({
      lines: [{ name: 'all of it', massG: 1848, sodiumMgPer100g: 7368.44 / 18.48 }],
      carbohydrateIncludesFibre: true,
      bakedMassG: 1848,
    }).rows.find(({ nutrient }) => nutrient === 'salt')?.per100g ?? Number.NaN,
  tolerance: { absolute: 5e-4 },
  why: 'half of the third decimal',
})

const eu = declaredAllergens({ present: ALLERGENS, region: 'eu' }).declared
publishedCheck({
  id: 'P-5.18',
  of: ['label/declared-allergens'],
  what: 'groups that the EU lists',
  source: `${regulation}, Annex II`,
  status: 'published',
  expected: 14,
  got: () => new Set(eu.map(({ group }) => group)).size,
  tolerance: { absolute: 0 },
  why: 'a count',
})
publishedCheck({
  id: 'P-5.18',
  of: ['label/declared-allergens'],
  what: 'cereals with gluten, named one by one',
  source: `${regulation}, Annex II`,
  status: 'published',
  expected: 'wheat spelt khorasan-wheat rye barley oats',
  got: () => eu.flatMap(({ group, named }) => (group === 'gluten' ? [named] : [])).join(' '),
})

const bread = (bakedMassG: number) =>
  ingredientList({
    lines: [
      { name: 'flour', massG: 1000 },
      { name: 'water', massG: 650, isAddedWater: true },
      { name: 'salt', massG: 20 },
    ],
    parts: [],
    allergens: [{ of: 'flour', allergen: 'wheat' }],
    bakedMassG,
    region: 'eu',
  })
publishedCheck({
  of: ['label/ingredient-list'],
  what: 'added water is what is left of the bread after all else: 1450 g less 1020 g',
  source: `${regulation}, Annex VII, Part A, 1`,
  status: 'published rule, dough invented',
  expected: 430,
  got: () => bread(1450).addedWaterG,
  tolerance: { relative: 1e-12 },
  why: 'exact arithmetic',
})
for (const [bakedMassG, expected] of [
  [1073, 1],
  [1074, 0],
] as const) {
  publishedCheck({
    of: ['label/ingredient-list'],
    what: `water that is ${bakedMassG - 1020} g of ${bakedMassG} g of bread: left out (1) or not (0), 5 % being the limit`,
    source: `${regulation}, Annex VII, Part A, 1`,
    status: 'published rule, dough invented',
    expected,
    got: () => Number(bread(bakedMassG).isWaterLeftOut),
    tolerance: { absolute: 0 },
    why: 'yes or no',
  })
}
publishedCheck({
  of: ['label/ingredient-list'],
  what: 'salt, 20 g of 1450 g of bread, may stand last because it is below 2 %',
  source: `${regulation}, Annex VII, Part A, 6`,
  status: 'from memory, dough invented',
  expected: 1,
  got: () => bread(1450).entries.filter(({ mayStandLast }) => mayStandLast).length,
  tolerance: { absolute: 0 },
  why: 'a count',
})
