import { checkDose } from '@/lib/calc/dosing/check-dose'
import { checkLimitOnFlour } from '@/tests/support/limit-checks'
import { publishedCheck } from '@/tests/support/published-check'
import { checkStoredLimit, storedLimit } from '@/tests/support/stored-limit'
import { ADDITIVE_LIMITS as L } from './data/additive-limits'

// Health Canada, list 2 (bleaching, maturing and dough conditioning agents), 2024; not compared with the text in force.
checkLimitOnFlour('P-5.1', L.azodicarbonamideCanada)
checkLimitOnFlour('P-5.3', L.ascorbicAcidCanada)
checkLimitOnFlour('P-5.5', L.cysteineCanada)
checkLimitOnFlour('P-5.6', L.calciumStearoylLactylateCanada)
checkLimitOnFlour('P-5.10', L.calciumPeroxideCanada)
checkLimitOnFlour('P-5.10', L.calciumIodateCanada)

const list2 = 'Health Canada, list 2, 18 December 2024'
for (const [substance, food, expected] of [
  ['ammonium-persulphate', 'any-bread', 100],
  ['calcium-peroxide', 'any-bread', 100],
  ['potassium-persulphate', 'any-bread', 100],
  ['ammonium-persulphate', 'white-flour', 250],
  ['benzoyl-peroxide', 'white-flour', 150],
  ['ascorbic-acid', 'flour-for-bread', 200],
] as const) {
  checkStoredLimit('Q-10.4', storedLimit('ca', substance, food), substance, expected, list2)
}
publishedCheck({
  id: 'Q-10.4',
  of: ['dosing/limits'],
  what: 'calcium peroxide, ammonium and potassium persulphate: 100 ppm is for how many of them together',
  source: list2,
  status: 'published',
  expected: 3,
  got: () => storedLimit('ca', 'calcium-peroxide', 'any-bread')?.substances.length ?? 0,
  tolerance: { absolute: 0 },
  why: 'a count',
})
const weighed = (substance: string, massG: number) => ({
  lineId: substance,
  substance,
  form: 'as weighed',
  massG,
  activeShare: 1,
})
publishedCheck({
  id: 'Q-10.4',
  of: ['dosing/check-dose'],
  what: 'calcium peroxide 60 and persulphate 55 ppm are 115 together, above 100',
  source: list2,
  status: 'published inputs',
  expected: 'over-unchecked-limit',
  got: () =>
    checkDose({
      sources: [weighed('calcium peroxide', 0.06), weighed('ammonium persulphate', 0.055)],
      flourMassG: 1000,
      finishedFoodPer100Flour: null,
      flourContentMgPerKg: {},
      conversions: [],
      customary: [],
      limits: [
        {
          ...L.calciumPeroxideCanada,
          form: 'as weighed',
          substances: ['calcium peroxide', 'ammonium persulphate', 'potassium persulphate'],
        },
      ],
    }).limits[0]?.code,
})
