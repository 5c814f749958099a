import { expect, test } from 'vitest'
import { CalcError } from '@/lib/calc/error'
import { eggsPerPound } from '@/lib/calc/label/eggs-per-pound'
import { ingredientList } from '@/lib/calc/label/ingredient-list'
import { activeMassG } from '@/lib/calc/dosing/active-mass'
import { checkDose } from '@/lib/calc/dosing/check-dose'
import type { ActiveSource, DoseLimit, FormConversion } from '@/lib/calc/dosing/types'
import { checkLimitOnFlour } from '@/tests/support/limit-checks'
import { publishedCheck } from '@/tests/support/published-check'
import { checkStoredLimit, storedLimit } from '@/tests/support/stored-limit'
import { ADDITIVE_LIMITS as L } from './data/additive-limits'

const GRAMS_PER_100_LB = 45_359.237
const finding = (sources: ActiveSource[], limit: DoseLimit, flourMassG: number, conversions: FormConversion[] = []) =>
  checkDose({
    sources,
    flourMassG,
    finishedFoodPer100Flour: null,
    flourContentMgPerKg: { azodicarbonamide: 0 },
    conversions,
    customary: [],
    limits: [limit],
  }).limits[0]
const azo = (massG: number): ActiveSource => ({
  lineId: 'azo',
  substance: 'azodicarbonamide',
  form: 'azodicarbonamide',
  massG,
  activeShare: 1,
})

publishedCheck({
  id: 'P-5.2',
  of: ['dosing/active-mass'],
  what: '45 ppm of 25 kg of flour, g',
  source: '21 CFR 172.806',
  status: 'published inputs',
  expected: 1.125,
  got: () => activeMassG({ dose: 45, unit: 'ppm-flour', flourMassG: 25_000 }),
  tolerance: { relative: 1e-12 },
  why: 'exact arithmetic',
})
publishedCheck({
  id: 'P-5.2',
  of: ['dosing/check-dose'],
  what: 'the printed equivalence, 2.05 g in 100 lb, in ppm',
  source: '21 CFR 172.806',
  status: 'published inputs',
  expected: 45.195,
  got: () => finding([azo(2.05)], L.azodicarbonamideUs, GRAMS_PER_100_LB)?.mgPerKg ?? Number.NaN,
  tolerance: { absolute: 5e-4 },
  why: 'half of the third decimal',
})
test("P-5.2 the regulation's own figure is within its own limit, 1 % more than that is not [published inputs]", () => {
  expect(finding([azo(2.05)], L.azodicarbonamideUs, GRAMS_PER_100_LB)?.code).toBe('within-unchecked-limit')
  expect(finding([azo(2.05 * 1.01)], L.azodicarbonamideUs, GRAMS_PER_100_LB)?.code).toBe('over-unchecked-limit')
})
test('P-5.1 the amount already in the flour is included in 45 ppm [published]', () => {
  const result = checkDose({
    sources: [azo(0.03)],
    flourMassG: 1000,
    finishedFoodPer100Flour: null,
    flourContentMgPerKg: { azodicarbonamide: 20 },
    conversions: [],
    customary: [],
    limits: [L.azodicarbonamideUs, L.azodicarbonamideEu],
  })
  expect(result.limits.map((f) => f.code)).toEqual(['over-unchecked-limit', 'not-permitted-unchecked'])
})

/** L-cysteine 121.16 in its hydrochloride monohydrate 175.63 g/mol. */
const toCysteine = [{ from: 'L-cysteine hydrochloride monohydrate', to: 'L-cysteine', factor: 121.16 / 175.63 }]
publishedCheck({
  id: 'P-5.5',
  of: ['dosing/check-dose'],
  what: 'the hydrochloride counts as the cysteine in it: 130 ppm weighed',
  source: '21 CFR 184.1271, 184.1272 (0.009 part total L-cysteine); molar masses 121.16 and 175.63',
  status: 'published inputs',
  expected: 130 * 0.689_86,
  got: () =>
    finding(
      [
        {
          lineId: 'c',
          substance: 'L-cysteine',
          form: 'L-cysteine hydrochloride monohydrate',
          massG: 0.13,
          activeShare: 1,
        },
      ],
      L.cysteineUs,
      1000,
      toCysteine,
    )?.mgPerKg ?? Number.NaN,
  tolerance: { relative: 1e-4 },
  why: 'molar masses to five figures',
})

checkLimitOnFlour('P-5.4', L.potassiumBromateUs)
checkLimitOnFlour('P-5.6', L.calciumStearoylLactylateUs)
checkLimitOnFlour('P-5.7', L.sodiumStearylFumarateUs)
checkLimitOnFlour('P-5.10', L.maltedBarleyUs)
checkLimitOnFlour('P-5.10', L.soyFlourUs)
checkLimitOnFlour('P-5.10', L.monocalciumPhosphateUs)

for (const [id, substance, food, expected, section] of [
  ['P-5.1', 'azodicarbonamide', 'any-flour', 45, '172.806'],
  ['P-5.4', 'potassium-bromate', 'bromated-flour', 50, '137.155'],
  ['P-5.5', 'cysteine', 'yeast-dough', 90, '184.1271, 184.1272'],
  ['P-5.6', 'calcium-stearoyl-lactylate', 'yeast-dough', 5000, '172.844'],
  ['Q-10.3', 'sodium-stearoyl-lactylate', 'any-baked-goods', 5000, '172.846'],
  ['P-5.7', 'sodium-stearyl-fumarate', 'any-baked-goods', 5000, '172.826'],
  ['Q-10.3', 'ethoxylated-mono-and-diglycerides', 'yeast-dough', 5000, '172.834'],
  ['Q-10.3', 'calcium-alginate', 'any-baked-goods', 20, '184.1187: 0.002 % as served'],
  ['P-5.10', 'malted-barley-flour', 'any-flour', 7500, '137.105: 0.75 %'],
] as const) {
  checkStoredLimit(id, storedLimit('us', substance, food), substance, expected, `21 CFR ${section}`)
}
publishedCheck({
  id: 'Q-10.3',
  of: ['dosing/limits'],
  what: 'DATEM: good practice only',
  source: '21 CFR 184.1101',
  status: 'published',
  expected: 'quantum-satis',
  got: () => storedLimit('us', 'datem', 'any-baked-goods')?.rule,
})

const eggs = {
  id: 'Q-10.5',
  of: ['label/eggs-per-pound'],
  source: '21 CFR 136.115(b): 2.56 %, 0.41 oz a medium egg',
} as const
for (const [eggSolidsPct, inLb, declared] of [
  [2.56, 0.99902, 0.8],
  [2.5625, 1, 1],
  [3.2, 1.24878, 1.2],
  [5.125, 2, 2],
] as const) {
  publishedCheck({
    ...eggs,
    what: `${eggSolidsPct} % of whole egg solids: eggs in a pound`,
    status: 'published rule, worked',
    expected: inLb,
    got: () => eggsPerPound({ eggSolidsPct }).eggsInLb,
    tolerance: { absolute: 5e-6 },
    why: 'half of the fifth decimal',
  })
  publishedCheck({
    ...eggs,
    what: `${eggSolidsPct} % of whole egg solids: eggs declared, to the fifth and not above`,
    status: 'published rule, worked',
    expected: declared,
    got: () => eggsPerPound({ eggSolidsPct }).declaredEggs,
    tolerance: { relative: 1e-12 },
    why: 'a whole fifth',
  })
}
publishedCheck({
  ...eggs,
  what: '2.55 % of whole egg solids: may not be named egg bread',
  status: 'published',
  expected: 'too-little-egg',
  got() {
    try {
      return `${eggsPerPound({ eggSolidsPct: 2.55 }).declaredEggs} declared`
    } catch (error) {
      if (error instanceof CalcError) return error.facts.reason
      throw error
    }
  },
})

const usList = (yeastG: number, saltG: number, butterG = 60) =>
  ingredientList({
    lines: [
      { name: 'salt', massG: saltG },
      { name: 'flour', massG: 1000 },
      { name: 'water', massG: 600, isAddedWater: true },
      { name: 'butter', massG: butterG },
      { name: 'yeast', massG: yeastG },
    ],
    parts: [],
    allergens: [],
    bakedMassG: 1000,
    region: 'us',
  })
for (const [yeastG, saltG, expected] of [
  [20, 18, 2],
  [15, 14, 1.5],
  [9, 10, 1],
  [5, 4, 0.5],
  [5.1, 4, 1],
] as const) {
  publishedCheck({
    id: 'Q-8.5',
    of: ['label/ingredient-list'],
    what: `‘contains … % or less of’ yeast ${yeastG} g and salt ${saltG} g in 1000 g: none above the stated figure`,
    source: '21 CFR 101.4(a)(2), copy of 2006',
    status: 'published rule, bread invented',
    expected,
    got: () => usList(yeastG, saltG).lastUpToPct ?? Number.NaN,
    tolerance: { absolute: 0 },
    why: 'one of four printed figures',
  })
}
publishedCheck({
  id: 'Q-8.5',
  of: ['label/ingredient-list'],
  what: '2 % may stand after that phrase, 2.01 % may not',
  source: '21 CFR 101.4(a)(2), copy of 2006',
  status: 'published rule, bread invented',
  expected: 'yeast, salt',
  got: () =>
    usList(20, 18, 20.1)
      .entries.filter(({ mayStandLast }) => mayStandLast)
      .map(({ name }) => name)
      .join(', '),
})
