import type { Composition } from '@/lib/calc/formula/types'
import { declaredAllergens } from '@/lib/calc/label/declared-allergens'
import { energy, type EnergyParts } from '@/lib/calc/label/energy'
import { ingredientList } from '@/lib/calc/label/ingredient-list'
import { nutritionPer100g } from '@/lib/calc/label/nutrition-per-100g'
import type { LabelLine } from '@/lib/calc/label/read-ingredients'
import { saltFromSodiumG } from '@/lib/calc/label/salt-from-sodium'
import { ALLERGENS, type AllergenStatement } from '@/lib/calc/label/types'
import { USDA_SR28 } from './data/usda-sr28'
import { publishedCheck } from '@/tests/support/published-check'

const regulation = 'Regulation (EU) No 1169/2011'
const none: EnergyParts = {
  fatG: 0,
  carbohydrateG: 0,
  polyolsG: 0,
  fibreG: 0,
  proteinG: 0,
  alcoholG: 0,
  organicAcidsG: 0,
  salatrimsG: 0,
  erythritolG: 0,
}

for (const [part, kj, kcal] of [
  ['fatG', 37, 9],
  ['carbohydrateG', 17, 4],
  ['polyolsG', 10, 2.4],
  ['fibreG', 8, 2],
  ['proteinG', 17, 4],
  ['alcoholG', 29, 7],
  ['organicAcidsG', 13, 3],
  ['salatrimsG', 25, 6],
  ['erythritolG', 0, 0],
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

const part = { fatG: 3.2, carbohydrateG: 48.3, fibreG: 2.9, proteinG: 8.6 }
for (const [unit, expected] of [
  ['energyKj', 1108.9],
  ['energyKcal', 262.2],
] as const) {
  publishedCheck({
    id: 'Q-8.9',
    of: ['label/energy'],
    what: `${unit} of fat 3.2, carbohydrate 48.3, fibre 2.9 and protein 8.6 g`,
    source: `${regulation}, Annex XIV, consolidated text of March 2024; worked`,
    status: 'published inputs',
    expected,
    got: () => energy({ ...none, ...part })[unit],
    tolerance: { absolute: 0.05 },
    why: 'given to the first decimal',
  })
}

const listed = (lines: readonly (readonly [name: string, massG: number])[], bakedMassG: number) =>
  ingredientList({
    lines: lines.map(([name, massG]) => ({ name, massG, isAddedWater: name === 'water' })),
    parts: [],
    allergens: [],
    bakedMassG,
    region: 'eu',
  })
const oilBread = () =>
  listed(
    [
      ['flour', 1000],
      ['water', 650],
      ['oil', 40],
      ['yeast', 25],
      ['salt', 20],
    ],
    1526.8,
  )
publishedCheck({
  id: 'Q-8.2',
  of: ['label/ingredient-list'],
  what: 'water of a bread of 1526.8 g is what is left after the rest',
  source: `${regulation}, Article 18(1) and Annex VII A 1, as in a university's guide to food labelling`,
  status: 'published inputs',
  expected: 441.8,
  got: () => oilBread().addedWaterG,
  tolerance: { absolute: 1e-9 },
  why: 'a difference of round masses',
})
publishedCheck({
  id: 'Q-8.2',
  of: ['label/ingredient-list'],
  what: 'and it stands after the flour',
  source: `${regulation}, Article 18(1) and Annex VII A 1`,
  status: 'published inputs',
  expected: 'flour, water, oil, yeast, salt',
  got: () =>
    [...oilBread().entries]
      .sort((a, b) => a.place - b.place)
      .map(({ name }) => name)
      .join(', '),
})
const cracker = () =>
  listed(
    [
      ['flour', 1000],
      ['water', 300],
      ['butter', 250],
      ['salt', 20],
    ],
    1290,
  )
publishedCheck({
  id: 'Q-8.3',
  of: ['label/ingredient-list'],
  what: 'water of a cracker, 20 g of 1290 g, may be left out',
  source: `${regulation}, Annex VII A 1`,
  status: 'published inputs',
  expected: 'left out',
  got: () => (cracker().isWaterLeftOut && Math.abs(cracker().addedWaterG - 20) < 1e-9 ? 'left out' : 'listed'),
})

const weighedIn: readonly (readonly [name: string, massG: number, composition: Composition])[] = [
  ['flour', 1000, USDA_SR28.ndb20129],
  ['water', 600, USDA_SR28.ndb14411],
  ['salt', 18, USDA_SR28.ndb02047],
  ['fresh yeast', 25, USDA_SR28.ndb18374],
  ['butter', 100, USDA_SR28.ndb01145],
  ['sugar', 80, USDA_SR28.ndb19335],
]
const sweetBread = () =>
  nutritionPer100g({
    lines: weighedIn.map(
      ([name, massG, { fatPct, carbohydratePct, sugarsPct, fibrePct, proteinPct, sodiumMgPer100g }]) => ({
        name,
        massG,
        fatPct,
        carbohydratePct,
        sugarsPct,
        fibrePct,
        proteinPct,
        sodiumMgPer100g,
      }),
    ),
    carbohydrateIncludesFibre: true,
    bakedMassG: 1823 * 0.88,
  })
for (const [nutrient, expected] of [
  ['energy-kj', 1200.14],
  ['energy-kcal', 284.38],
  ['fat', 6.1203],
  ['carbohydrate', 48.8608],
  ['sugars', 5.1738],
  ['fibre', 1.6223],
  ['protein', 7.6516],
  ['salt', 1.0971],
] as const) {
  const row = () => sweetBread().rows.find((one) => one.nutrient === nutrient)
  publishedCheck({
    id: 'Q-8.11',
    of: ['label/nutrition-per-100g'],
    what: `${nutrient} in 100 g of a sweet bread that loses 12 %`,
    source: `${regulation}, Annexes I and XIV, with USDA SR28; worked by mass balance`,
    status: 'published inputs',
    expected,
    got: () => row()?.per100g ?? Number.NaN,
    tolerance: { absolute: nutrient.startsWith('energy') ? 0.005 : 5e-5 },
    why: 'half of the last decimal given',
  })
}

const readingGuide = 'as in the University of Reading’s guide to food labelling'
const spiritCake = () =>
  ingredientList({
    lines: [
      { name: 'flour', massG: 500 },
      { name: 'spirit', massG: 120, leftInBreadG: 30 },
      { name: 'water', massG: 300, isAddedWater: true },
      { name: 'sugar', massG: 100 },
    ],
    parts: [],
    allergens: [],
    bakedMassG: 880,
    region: 'eu',
  })
publishedCheck({
  id: 'Q-8.1',
  of: ['label/ingredient-list'],
  what: 'order by weight at the time of use, but water (250 g left) and what is volatile (30 g left) by weight in the product',
  source: `${regulation}, Article 18(1) and Annex VII A 1, ${readingGuide}`,
  status: 'published rule, cake invented',
  expected: 'flour 500, water 250, sugar 100, spirit 30',
  got: () =>
    spiritCake()
      .entries.map(({ name, massG }) => `${name} ${massG}`)
      .join(', '),
})
for (const [bakedMassG, expected] of [
  [1000, 'left out'],
  [1000.1, 'listed'],
] as const) {
  publishedCheck({
    id: 'Q-8.1',
    of: ['label/ingredient-list'],
    what: `added water, ${bakedMassG} g less 950 g, where 5 % need not be counted and more must be`,
    source: `${regulation}, Annex VII A 1, ${readingGuide}`,
    status: 'published rule, dough invented',
    expected,
    got: () =>
      listed(
        [
          ['flour', 940],
          ['water', 400],
          ['salt', 10],
        ],
        bakedMassG,
      ).isWaterLeftOut
        ? 'left out'
        : 'listed',
  })
}

const chips = (isOpened: boolean) =>
  ingredientList({
    lines: [
      { name: 'flour', massG: 200 },
      { name: 'sugar', massG: 80 },
      { name: 'chips', massG: 120, isOpened },
    ],
    parts: [
      { of: 'chips', name: 'lecithin', sharePct: 1, additiveClass: 'emulsifier' },
      { of: 'chips', name: 'cocoa mass', sharePct: 49 },
      { of: 'chips', name: 'Sugar', sharePct: 50 },
    ],
    allergens: [
      { of: 'flour', allergen: 'wheat' },
      { of: 'lecithin', allergen: 'soya' },
    ],
    bakedMassG: 400,
    region: 'eu',
  })
publishedCheck({
  id: 'Q-8.4',
  of: ['label/ingredient-list'],
  what: 'chips opened into the list: sugar 80 g and half of 120 g, added up',
  source: `${regulation}, Annex VII E`,
  status: 'from memory; arithmetic',
  expected: 140,
  got: () => chips(true).entries.find(({ name }) => name === 'sugar')?.massG ?? Number.NaN,
  tolerance: { relative: 1e-12 },
  why: 'exact arithmetic',
})
publishedCheck({
  id: 'Q-8.4',
  of: ['label/ingredient-list'],
  what: 'opened, each substance stands once, its additive by class and its allergen marked',
  source: `${regulation}, Annex VII E`,
  status: 'from memory; arithmetic',
  expected: 'flour!, sugar, cocoa mass, emulsifier: lecithin!',
  got: () => said(chips(true)),
})
publishedCheck({
  id: 'Q-8.4',
  of: ['label/ingredient-list'],
  what: 'or named, its own list in brackets after it in descending order',
  source: `${regulation}, Annex VII E, on a UK trading-standards page`,
  status: 'published rule, biscuit invented',
  expected: 'flour!, chips, (Sugar, (cocoa mass, (emulsifier: lecithin!, sugar',
  got: () => said(chips(false)),
})
function said({ entries }: ReturnType<typeof chips>): string {
  return entries
    .map(
      (one) =>
        `${one.inside === null ? '' : '('}${one.additiveClass === null ? '' : `${one.additiveClass}: `}${one.name}${one.isEmphasised ? '!' : ''}`,
    )
    .join(', ')
}
for (const [exemptMix, massG, expected] of [
  ['spices-or-herbs', 19.9, 'cumin'],
  ['defined-by-union-law', 19.9, 'cumin'],
  ['spices-or-herbs', 20, 'none'],
  [undefined, 19.9, 'none'],
] as const) {
  publishedCheck({
    id: 'Q-8.4',
    of: ['label/ingredient-list'],
    what: `parts that may be left out of ${massG} g of a mix (${exemptMix ?? 'not exempt'}) in 1000 g: additive and allergen never`,
    source: `${regulation}, Annex VII E 2`,
    status: 'from memory, bread invented',
    expected,
    got: () =>
      ingredientList({
        lines: [
          { name: 'flour', massG: 1100 },
          { name: 'mix', massG, exemptMix },
        ],
        parts: [
          { of: 'mix', name: 'cumin', sharePct: 60 },
          { of: 'mix', name: 'celery', sharePct: 30 },
          { of: 'mix', name: 'silicon dioxide', sharePct: 10, additiveClass: 'anti-caking-agent', eNumber: 'E 551' },
        ],
        allergens: [
          { of: 'cumin', allergen: 'none' },
          { of: 'celery', allergen: 'celery' },
          { of: 'silicon dioxide', allergen: 'none' },
        ],
        bakedMassG: 1000,
        region: 'eu',
      })
        .entries.filter(({ mayBeLeftOut }) => mayBeLeftOut)
        .map(({ name }) => name)
        .join(', ') || 'none',
  })
}
publishedCheck({
  id: 'Q-8.5',
  of: ['label/ingredient-list'],
  what: 'below 2 % of 1000 g any order after the others: 19.9 g may, 20 g may not',
  source: `${regulation}, Annex VII A 6, on a UK trading-standards page`,
  status: 'published rule, dough invented',
  expected: 'yeast, salt',
  got: () =>
    listed(
      [
        ['flour', 1040],
        ['butter', 20],
        ['yeast', 19.9],
        ['salt', 18],
      ],
      1000,
    )
      .entries.filter(({ mayStandLast }) => mayStandLast)
      .map(({ name }) => name)
      .join(', '),
})

const additive = (line: Omit<LabelLine, 'massG'>, allergen?: AllergenStatement) =>
  ingredientList({
    lines: [
      { name: 'flour', massG: 1000 },
      { massG: 1, ...line },
    ],
    parts: [],
    allergens: allergen === undefined ? [] : [{ of: line.name, allergen }],
    bakedMassG: 900,
    region: 'eu',
  }).entries[1]
publishedCheck({
  id: 'Q-8.6',
  of: ['label/ingredient-list'],
  what: 'ascorbic acid: category, then specific name or E number',
  source: `${regulation}, Annex VII C, ${readingGuide} and on flour millers’ pages`,
  status: 'published',
  expected: 'flour-treatment-agent, ascorbic acid, E 300, class-then-name-or-number',
  got: () => {
    const entry = additive({ name: 'ascorbic acid', additiveClass: 'flour-treatment-agent', eNumber: 'E300' })
    return [entry?.additiveClass, entry?.name, entry?.eNumber, entry?.sayAs].join(', ')
  },
})
for (const [allergen, expected] of [
  ['none', 'class-alone'],
  ['wheat', 'class-then-grain'],
] as const) {
  publishedCheck({
    id: 'Q-8.6',
    of: ['label/ingredient-list'],
    what: `modified starch, allergen ${allergen}: neither name nor number, but its grain if gluten`,
    source: `${regulation}, Annex VII C, on additive makers’ pages`,
    status: 'published',
    expected,
    got: () =>
      additive({ name: 'acetylated starch', additiveClass: 'modified-starch', eNumber: 'E 1420' }, allergen)?.sayAs,
  })
}
