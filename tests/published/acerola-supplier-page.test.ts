import { expect, test } from 'vitest'
import { checkDose } from '@/lib/calc/dosing/check-dose'
import { publishedCheck } from '@/tests/support/published-check'
import { ADDITIVE_LIMITS as L } from './data/additive-limits'

const check = (pureMassG: number) =>
  checkDose({
    sources: [
      { lineId: 'acerola', substance: 'ascorbic acid', form: 'ascorbic acid', massG: 1, activeShare: 0.17 },
      { lineId: 'pure', substance: 'ascorbic acid', form: 'ascorbic acid', massG: pureMassG, activeShare: 1 },
    ],
    flourMassG: 1000,
    finishedFoodPer100Flour: null,
    flourContentMgPerKg: {},
    conversions: [],
    customary: [],
    limits: [L.ascorbicAcidCanada, L.ascorbicAcidEu],
  }).limits

publishedCheck({
  id: 'P-5.16',
  of: ['dosing/check-dose'],
  what: 'acerola powder at 17 %, 0.1 % of flour: vitamin C, ppm',
  source: 'Supplier page on acerola for bakeries',
  status: 'published inputs',
  expected: 170,
  got: () => check(0)[0]?.mgPerKg ?? Number.NaN,
  tolerance: { relative: 1e-12 },
  why: 'exact arithmetic',
})
test('P-5.3, P-5.16 with 50 ppm of pure acid beside it the Canadian 200 ppm is passed; the EU has no number [published]', () => {
  expect(check(0.05).map((f) => [f.code, f.mgPerKg === null ? null : Math.round(f.mgPerKg)])).toEqual([
    ['over-unchecked-limit', 220],
    ['within-unchecked-limit', 220],
  ])
})
