import { activeMassG } from '@/lib/calc/dosing/active-mass'
import { checkDose } from '@/lib/calc/dosing/check-dose'
import { equalActiveMassG } from '@/lib/calc/dosing/equal-active-mass'
import { productMassG } from '@/lib/calc/dosing/product-mass'
import { publishedCheck } from '@/tests/support/published-check'

const practice = { source: 'figures of the trade on egg yolk and lecithin', status: 'common practice, no source' }
const pure = { by: 'share', substance: 'lecithin', activeShare: 1, strengthShare: 1 } as const

for (const [yolkG, per100gG] of [
  [15, 6.5],
  [18, 5.6],
  [15, 6.7],
] as const) {
  publishedCheck({
    ...practice,
    of: ['dosing/equal-active-mass'],
    what: `one egg yolk of 15 to 18 g with 5 to 8 g of lecithin in 100 g holds about 1 g: ${yolkG} g at ${per100gG} g`,
    expected: 1,
    got: () => equalActiveMassG({ massG: yolkG, from: { ...pure, activeShare: per100gG / 100 }, to: pure }),
    tolerance: { absolute: 0.05 },
    why: 'given as about 1 g',
  })
}
for (const [per100gG, expected] of [
  [5, 20],
  [8, 12.5],
] as const) {
  publishedCheck({
    ...practice,
    of: ['dosing/product-mass'],
    what: `yolk that brings 1 g of lecithin at ${per100gG} g in 100 g: the 15 to 18 g of one yolk lie between`,
    expected,
    got: () => productMassG({ activeMassG: 1, activeShare: per100gG / 100, strengthShare: 1 }),
    tolerance: { relative: 1e-12 },
    why: 'exact arithmetic',
  })
}
/** Flour of a small single loaf, from 1 g being 0.6 % of it. */
const flourMassG = 1 / 0.006
for (const [dose, expected] of [
  [0.6, 1],
  [1.2, 2],
] as const) {
  publishedCheck({
    ...practice,
    of: ['dosing/active-mass'],
    what: `${dose} % of the flour of a small single loaf, g`,
    expected,
    got: () => activeMassG({ dose, unit: 'pct-flour', flourMassG }),
    tolerance: { relative: 1e-12 },
    why: 'exact arithmetic on flour that 1 g is 0.6 % of',
  })
}
for (const [pctFlour, expected] of [
  [0.19, 'below-customary'],
  [0.2, 'customary'],
  [3, 'customary'],
  [3.1, 'above-customary'],
] as const) {
  publishedCheck({
    ...practice,
    of: ['dosing/check-dose'],
    what: `soya lecithin is used at 0.2 to 3 % on flour: ${pctFlour} %`,
    expected,
    got: () =>
      checkDose({
        sources: [{ lineId: 'l', substance: 'lecithin', form: 'lecithin', massG: 10 * pctFlour, activeShare: 1 }],
        flourMassG: 1000,
        finishedFoodPer100Flour: null,
        flourContentMgPerKg: {},
        conversions: [],
        customary: [
          {
            substance: 'lecithin',
            form: 'lecithin',
            minMgPerKgFlour: 2000,
            maxMgPerKgFlour: 30_000,
            source: 'common practice, no source',
          },
        ],
        limits: [],
      }).customary[0]?.code,
  })
}
