import { portionIntake, type IntakeNutrient } from '@/lib/calc/label/portion-intake'
import { publishedCheck } from '@/tests/support/published-check'

const source = 'Reference intakes of an adult, UK health service page; Regulation (EU) No 1169/2011, Annex XIII, part B'
const found = (q: Parameters<typeof portionIntake>[0], nutrient: IntakeNutrient) =>
  portionIntake(q).rows.find((row) => row.nutrient === nutrient)?.intakePct ?? Number.NaN

for (const [nutrient, field, intake] of [
  ['energy-kj', 'energyKj', 840],
  ['energy-kcal', 'energyKcal', 200],
  ['fat', 'fatG', 7],
  ['saturates', 'saturatesG', 2],
  ['carbohydrate', 'carbohydrateG', 26],
  ['sugars', 'sugarsG', 9],
  ['protein', 'proteinG', 5],
  ['salt', 'saltG', 0.6],
] as const) {
  publishedCheck({
    id: 'Q-8.15',
    of: ['label/portion-intake'],
    what: `${nutrient}: a tenth of the intake in 100 g, a portion of 1000 g, %`,
    source,
    status: 'published',
    expected: 100,
    got: () => found({ portionG: 1000, [field]: intake }, nutrient),
    tolerance: { relative: 1e-12 },
    why: 'the printed intake itself',
  })
}

const bread = {
  portionG: 50,
  energyKj: 1200.14,
  energyKcal: 284.38,
  fatG: 6.1203,
  carbohydrateG: 48.8608,
  sugarsG: 5.1738,
  proteinG: 7.6516,
  saltG: 1.0971,
}
for (const [nutrient, expected] of [
  ['energy-kj', 7.14],
  ['fat', 4.37],
  ['carbohydrate', 9.4],
  ['sugars', 2.87],
  ['protein', 7.65],
  ['salt', 9.14],
] as const) {
  publishedCheck({
    id: 'Q-8.15',
    of: ['label/portion-intake'],
    what: `50 g of a bread of USDA SR28 ingredients, ${nutrient}, % of the intake`,
    source,
    status: 'worked',
    expected,
    got: () => found(bread, nutrient),
    tolerance: { absolute: 0.005 },
    why: 'half of the second decimal',
  })
}
