import { expect, test } from 'vitest'
import { checkDose } from '@/lib/calc/dosing/check-dose'
import { equalActiveMassG } from '@/lib/calc/dosing/equal-active-mass'
import { publishedCheck } from '@/tests/support/published-check'

publishedCheck({
  id: 'P-5.12',
  of: ['dosing/equal-active-mass'],
  what: 'fluid grade at 63 % acetone-insolubles, 100 g, as de-oiled at 96 %',
  source: 'Fluid 60 to 65 %: supplier specification; 62 to 65 % fluid and 95 to 97 % de-oiled: from memory',
  status: 'from memory',
  expected: 65.625,
  got: () =>
    equalActiveMassG({
      massG: 100,
      from: { by: 'share', substance: 'acetone-insolubles', activeShare: 0.63, strengthShare: 1 },
      to: { by: 'share', substance: 'acetone-insolubles', activeShare: 0.96, strengthShare: 1 },
    }),
  tolerance: { relative: 1e-12 },
  why: 'exact arithmetic',
})
test("P-5.13 a supplier's 1 % is above the textbook range of 0.1 to 0.5 % (from memory): a warning, no refusal", () => {
  const range = {
    substance: 'lecithin',
    form: 'lecithin',
    minMgPerKgFlour: 1000,
    maxMgPerKgFlour: 5000,
    source: 'textbook range, from memory',
  }
  const result = checkDose({
    sources: [{ lineId: 'l', substance: 'lecithin', form: 'lecithin', massG: 10, activeShare: 1 }],
    flourMassG: 1000,
    finishedFoodPer100Flour: null,
    flourContentMgPerKg: {},
    conversions: [],
    customary: [range],
    limits: [],
  })
  expect(result.customary[0]).toMatchObject({ code: 'above-customary', mgPerKgFlour: expect.closeTo(10_000, 8) })
})
