import { expect, test } from 'vitest'
import { checkDose } from '@/lib/calc/dosing/check-dose'
import type { DoseLimit } from '@/lib/calc/dosing/types'
import { publishedCheck } from '@/tests/support/published-check'
import { checkStoredLimit, storedLimit } from '@/tests/support/stored-limit'
import { ADDITIVE_LIMITS as L } from './data/additive-limits'

const source =
  'Regulation (EC) 1333/2008, Annex II, 07.1; molar masses 186.22 (calcium propionate) and 74.08 (propionic acid)'
const propionate = (form: string, limit: DoseLimit) =>
  checkDose({
    sources: [{ lineId: 'p', substance: 'propionic acid', form: 'calcium propionate', massG: 3, activeShare: 1 }],
    flourMassG: 1000,
    finishedFoodPer100Flour: 145,
    flourContentMgPerKg: {},
    conversions: [{ from: 'calcium propionate', to: 'propionic acid', factor: (2 * 74.08) / 186.22 }],
    customary: [],
    limits: [{ ...limit, form }],
  }).limits[0]

publishedCheck({
  id: 'P-5.9',
  of: ['dosing/check-dose'],
  what: '0.3 % calcium propionate on flour at 145 g of bread from 100 g of flour, mg/kg of bread',
  source,
  status: 'published inputs',
  expected: 2068.97,
  got: () => propionate('calcium propionate', L.propionatesEuRye)?.mgPerKg ?? Number.NaN,
  tolerance: { absolute: 0.005 },
  why: 'half of the second decimal',
})
publishedCheck({
  id: 'P-5.9',
  of: ['dosing/check-dose'],
  what: 'the same as propionic acid',
  source,
  status: 'published inputs',
  expected: 1646.11,
  got: () => propionate('propionic acid', L.propionatesEuRye)?.mgPerKg ?? Number.NaN,
  tolerance: { relative: 1e-5 },
  why: 'the factor is given to five figures, 0.79562',
})
test('P-5.8 3000 mg/kg is kept, 1000 mg/kg (other prepacked bread) is not, and neither limit counts as checked [published]', () => {
  expect(propionate('propionic acid', L.propionatesEuRye)?.code).toBe('within-unchecked-limit')
  expect(propionate('propionic acid', { ...L.propionatesEuRye, maxMgPerKg: 1000 })?.code).toBe('over-unchecked-limit')
})
test('P-5.6 0.5 % of stearoyl lactylates, lawful on flour in the US, is judged on bread in the EU: 3448 mg/kg is over 3000 [published]', () => {
  const result = checkDose({
    sources: [{ lineId: 's', substance: 'stearoyl lactylates', form: 'stearoyl lactylates', massG: 5, activeShare: 1 }],
    flourMassG: 1000,
    finishedFoodPer100Flour: 145,
    flourContentMgPerKg: {},
    conversions: [],
    customary: [],
    limits: [L.stearoylLactylatesEu],
  }).limits[0]
  expect(result).toMatchObject({ code: 'over-unchecked-limit', mgPerKg: expect.closeTo(3448.28, 2) })
})

const annex = 'Regulation (EC) 1333/2008, Annex II, in a Portuguese institute’s additive database'
for (const [id, substance, food, expected] of [
  ['Q-10.1', 'sorbates', 'listed-prepacked-bread', 2000],
  ['Q-10.1', 'propionates', 'sliced-or-rye-prepacked', 3000],
  ['Q-10.1', 'propionates', 'part-baked-or-reduced-prepacked', 2000],
  ['Q-10.1', 'propionates', 'other-prepacked-bread', 1000],
  ['P-5.6', 'sodium-stearoyl-lactylate', 'bread-but-plain', 3000],
] as const) {
  checkStoredLimit(id, storedLimit('eu', substance, food), substance, expected, annex)
}
for (const [substance, food, expected] of [
  ['sorbates', 'listed-prepacked-bread', 'as-free-acid'],
  ['propionates', 'sliced-or-rye-prepacked', 'form-not-stated'],
] as const) {
  publishedCheck({
    id: 'Q-10.1',
    of: ['dosing/limits'],
    what: `${substance}: form of the figure`,
    source: annex,
    status: 'published',
    expected,
    got: () => storedLimit('eu', substance, food)?.form,
  })
}
for (const [substance, food, expected] of [
  ['propionates', 'sliced-or-rye-prepacked', 'singly-or-together, may-come-from-fermentation'],
  ['propionates', 'part-baked-or-reduced-prepacked', 'singly-or-together, may-come-from-fermentation'],
  ['propionates', 'other-prepacked-bread', 'singly-or-together, may-come-from-fermentation'],
  ['sorbates', 'listed-prepacked-bread', 'singly-or-together'],
  ['sodium-stearoyl-lactylate', 'bread-but-plain', 'singly-or-together'],
] as const) {
  publishedCheck({
    id: 'Q-10.1',
    of: ['dosing/limits'],
    what: `${substance}, ${food}: notes at the figure`,
    source: annex,
    status: 'published',
    expected,
    got: () => storedLimit('eu', substance, food)?.notes.join(', '),
  })
}
// Sorbic acid 112.13, potassium sorbate 150.22 g/mol; 145 g of bread from 100 g of flour.
const sorbate = () =>
  checkDose({
    sources: [{ lineId: 's', substance: 'sorbic acid', form: 'potassium sorbate', massG: 3.8851, activeShare: 1 }],
    flourMassG: 1000,
    finishedFoodPer100Flour: 145,
    flourContentMgPerKg: {},
    conversions: [{ from: 'potassium sorbate', to: 'sorbic acid', factor: 112.13 / 150.22 }],
    customary: [],
    limits: [{ ...L.propionatesEuRye, maxMgPerKg: 2001, form: 'sorbic acid', substances: ['sorbic acid'] }],
  }).limits[0]
publishedCheck({
  id: 'Q-10.2',
  of: ['dosing/check-dose'],
  what: '0.38851 % of flour as potassium sorbate at 145 g of bread from 100 g of flour: sorbic acid, mg/kg of bread',
  source: 'Regulation (EC) 1333/2008, Annex II, 07.1; molar masses 150.22 and 112.13',
  status: 'arithmetic',
  expected: 2000,
  got: () => sorbate()?.mgPerKg ?? Number.NaN,
  tolerance: { relative: 1e-5 },
  why: 'the dose is given to five digits',
})
