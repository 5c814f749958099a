import { expect, test } from 'vitest'
import { balanceArm } from '@/lib/calc/arms/balance-arm'
import { equalActiveMassG } from '@/lib/calc/dosing/equal-active-mass'
import { productMassG } from '@/lib/calc/dosing/product-mass'
import { atMoistureBasisPct } from '@/lib/calc/formula/at-moisture-basis'
import { compositionWarnings } from '@/lib/calc/formula/composition-warnings'
import { hydration, type HydrationConvention } from '@/lib/calc/formula/hydration'
import { nutrientShare } from '@/lib/calc/formula/nutrient-share'
import { nutrientTotals } from '@/lib/calc/formula/nutrient-totals'
import type { Composition, Formula } from '@/lib/calc/formula/types'
import { compositionTable } from '@/tests/support/composition-table'
import { line, straightDough } from '@/tests/support/formula-samples'
import { publishedCheck } from '@/tests/support/published-check'
import { USDA_SR28 as F } from './data/usda-sr28'

const source = 'USDA National Nutrient Database for Standard Reference, release 28, 2015'
const status = 'published inputs'

const enriched = straightDough(
  line('flour', 'flour', 1000, F.ndb20129),
  line('water', 'water', 200, F.ndb14411),
  line('milk', 'dairy', 300, F.ndb01077, { isPouredLiquid: true }),
  line('egg', 'egg', 150, F.ndb01123),
  line('butter', 'fat', 100, F.ndb01145),
  line('honey', 'sugar', 50, F.ndb19296),
  line('yeast', 'yeast', 30, F.ndb18374),
  line('salt', 'salt', 18, F.ndb02047),
)
const mixed = straightDough(
  line('bread flour', 'flour', 700, F.ndb20129),
  line('whole wheat', 'flour', 200, F.ndb20080),
  line('rye', 'flour', 100, F.ndb20064),
  line('water', 'water', 650, F.ndb14411),
  line('salt', 'salt', 20, F.ndb02047),
  line('yeast', 'yeast', 7, F.ndb18375),
)
const yoghurt = straightDough(
  line('flour', 'flour', 1000, F.ndb20481),
  line('yoghurt', 'dairy', 200, F.ndb01116),
  line('water', 'water', 430, F.ndb14411),
  line('salt', 'salt', 20, F.ndb02047),
  line('yeast', 'yeast', 20, F.ndb18374),
  line('oil', 'fat', 40, F.ndb04053, { isPouredLiquid: true }),
)
const lean = straightDough(
  line('flour', 'flour', 1000, F.ndb20129),
  line('water', 'water', 680, { ...F.ndb14411, waterPct: 100, ashPct: 0 }),
  line('salt', 'salt', 20, F.ndb02047),
  line('yeast', 'yeast', 10, F.ndb18375),
)
const waterOf = (formula: Formula) => nutrientTotals(formula).totals.find((t) => t.nutrient === 'water')
const doughMassG = (formula: Formula) => formula.lines.reduce((sum, l) => sum + l.massG, 0)

for (const [id, what, expected, formula, convention] of [
  ['P-2.4', 'enriched dough, plain water', 20.0, enriched, 'plain-water'],
  ['P-2.4', 'enriched dough, water beside the flour', 62.5641, enriched, 'water-beside-flour'],
  ['P-2.4', 'enriched dough, all water', 75.9241, enriched, 'all-water'],
  ['P-2.5', 'mixed flours, water beside the flour (tap water is 99.9 % water)', 64.9746, mixed, 'water-beside-flour'],
  ['P-2.5', 'mixed flours, all water', 77.5716, mixed, 'all-water'],
  ['P-2.6', 'yoghurt dough, water beside the flour', 61.921, yoghurt, 'water-beside-flour'],
  ['P-2.6', 'yoghurt dough, poured liquids: yoghurt does not pour, oil does', 47.0, yoghurt, 'poured-liquids'],
] as const satisfies readonly (readonly [string, string, number, Formula, HydrationConvention])[]) {
  publishedCheck({
    id,
    of: ['formula/hydration'],
    what,
    source,
    status,
    expected,
    got: () => hydration(formula, convention).pctFlour,
    tolerance: { relative: 1e-6 },
    why: 'worked result given to six figures',
  })
}
publishedCheck({
  id: 'P-2.4',
  of: ['formula/nutrient-totals'],
  what: 'all water on 1848 g of dough',
  source,
  status,
  expected: 41.084,
  got: () => waterOf(enriched)?.pctDough ?? Number.NaN,
  tolerance: { absolute: 5e-4 },
  why: 'half of the third decimal',
})
publishedCheck({
  id: 'P-2.5',
  of: ['formula/nutrient-totals'],
  what: 'all water on 1677 g of dough',
  source,
  status,
  expected: 46.256,
  got: () => waterOf(mixed)?.pctDough ?? Number.NaN,
  tolerance: { absolute: 5e-4 },
  why: 'half of the third decimal',
})
publishedCheck({
  id: 'P-2.7',
  of: ['formula/nutrient-totals'],
  what: 'salt equivalent of 100 g of table salt is not the 99.8 g that is salt',
  source: `${source}, row 02047; Regulation (EU) 1169/2011, Annex I (from memory)`,
  status,
  expected: 96.9,
  got: () => {
    const salted = nutrientTotals(
      straightDough(line('flour', 'flour', 1, { ...F.ndb20129, sodiumMgPer100g: 0 }), line('salt', 'salt', 100, F.ndb02047)),
    )
    return salted.totals.find((t) => t.nutrient === 'salt')?.massG ?? Number.NaN
  },
  tolerance: { absolute: 0.05 },
  why: 'given to 0.1 g',
})
publishedCheck({
  id: 'P-2.8',
  of: ['formula/nutrient-totals'],
  what: 'salt equivalent of the enriched dough, g',
  source,
  status,
  expected: 18.421,
  got: () => nutrientTotals(enriched).totals.find((t) => t.nutrient === 'salt')?.massG ?? Number.NaN,
  tolerance: { absolute: 5e-4 },
  why: 'half of the third decimal',
})
publishedCheck({
  id: 'P-2.8',
  of: ['formula/nutrient-totals'],
  what: 'salt equivalent, g per 100 g of dough',
  source,
  status,
  expected: 0.997,
  got: () => nutrientTotals(enriched).totals.find((t) => t.nutrient === 'salt')?.pctDough ?? Number.NaN,
  tolerance: { absolute: 5e-4 },
  why: 'half of the third decimal',
})

const codes = (row: Composition) => compositionWarnings('row', row).map(({ code }) => code)
for (const [id, what, row, expected] of [
  ['P-2.9', 'fresh yeast, 99.2 in 100 g', F.ndb18374, 'not-closed'],
  ['P-2.9', 'distilled vinegar, 94.8', F.ndb02053, 'not-closed'],
  ['P-2.9', 'baking soda, 37.1', F.ndb18372, 'not-closed'],
  ['P-2.9', 'bread flour, 100', F.ndb20129, 'nothing'],
  ['P-2.10', 'whole milk, sugars 5.05 against 4.80', F.ndb01077, 'sugars-above-carbohydrate'],
  ['P-2.10', 'skim milk, 5.09 against 4.96', F.ndb01151, 'sugars-above-carbohydrate'],
  ['P-2.10', 'heavy cream, 2.92 against 2.74', F.ndb01053, 'sugars-above-carbohydrate'],
  ['P-2.10', 'light cream, 3.67 against 2.82', F.ndb01050, 'sugars-above-carbohydrate'],
] as const) {
  publishedCheck({
    id,
    of: ['formula/composition-warnings'],
    what: `what is odd about ${what}`,
    source,
    status: 'published',
    expected,
    got: () => codes(row).join(', ') || 'nothing',
  })
}
test('P-2.9 every row adds up to what the table says, and is warned of exactly when that is not near 100', () => {
  for (const { id, composition, closurePct, saltG } of compositionTable()) {
    const warned = codes(composition).includes('not-closed')
    expect(warned, id).toBe(Math.abs(closurePct - 100) > 0.5)
    expect(nutrientShare(composition, 'salt'), id).toBeCloseTo(saltG / 100, 4)
  }
})

// By hand, with row 01053: butter −36.08/0.8111 holds the fat of 100 g of cream; water takes up what is left of its 57.81 g.
const butterG = -36.08 / 0.8111
for (const [id, expected] of [
  ['butter', butterG],
  ['water', -(57.81 + 0.1794 * butterG) / 0.999],
] as const) {
  publishedCheck({
    of: ['arms/balance-arm'],
    what: `100 g of heavy cream balanced for fat and water: change of ${id}, g`,
    source: `${source}, rows 01053, 01145 and 14411`,
    status,
    expected,
    got: () =>
      balanceArm({
        control: enriched.lines.map((l) => ({ ...l, standsInFor: l.kind === 'fat' ? (['water', 'fat'] as const) : (['water'] as const), resolutionG: 0 })),
        added: [{ ...line('cream', 'dairy', 100, F.ndb01053), standsInFor: ['water', 'fat'], resolutionG: 0 }],
        hold: ['fat', 'water'],
        moves: ['butter', 'water'].map((lineId) => ({ lineId, minG: 0, maxG: null })),
        how: 'balanced',
      }).lines.find(({ lineId }) => lineId === id)?.changeG ?? Number.NaN,
    tolerance: { relative: 1e-9 },
    why: 'two equations worked by hand',
  })
}

for (const [what, expected, valuePct, basisPct] of [
  ['protein at 14 %', 11.8915, 11.98, 14],
  ['protein on dry matter', 13.8273, 11.98, 0],
  ['ash at 14 %', 0.46653, 0.47, 14],
  ['ash on dry matter', 0.54247, 0.47, 0],
] as const) {
  publishedCheck({
    id: 'P-3.4',
    of: ['formula/at-moisture-basis'],
    what: `bread flour at 13.36 % moisture: ${what}`,
    source: `${source}, row 20129`,
    status,
    expected,
    got: () => atMoistureBasisPct({ valuePct, moisturePct: 13.36, basisPct }),
    tolerance: { relative: 1e-5 },
    why: 'worked result given to five or six figures',
  })
}

const PCT_SOLIDS_OF_US_BREAD = 62
publishedCheck({
  id: 'P-3.10',
  of: ['formula/nutrient-totals'],
  what: 'heaviest bread with 62 % solids from the solids of the dough, g (fermentation loss ignored)',
  source: `21 CFR 136.110(a), total solids of bread; composition from ${source}`,
  status,
  expected: 1444.99,
  got: () => (100 * (doughMassG(lean) - (waterOf(lean)?.massG ?? Number.NaN))) / PCT_SOLIDS_OF_US_BREAD,
  tolerance: { relative: 1e-4 },
  why: 'the worked figure takes mixing water as pure and salt as dry (0.04 g)',
})

test('P-3.9 bread flour passes the ash rule of 21 CFR 137.105: dry ash <= dry protein / 20 + 0.35 [published]', () => {
  const dry = (valuePct: number) => atMoistureBasisPct({ valuePct, moisturePct: 13.36, basisPct: 0 })
  expect(dry(0.47)).toBeCloseTo(0.5425, 4)
  expect(dry(11.98) / 20 + 0.35).toBeCloseTo(1.0414, 4)
  expect(dry(0.47)).toBeLessThanOrEqual(dry(11.98) / 20 + 0.35)
})

const dryMatter = (waterPct: number | null) => (100 - (waterPct ?? Number.NaN)) / 100
publishedCheck({
  id: 'P-1.9',
  of: ['dosing/equal-active-mass'],
  what: 'instant yeast that brings the solids of 1 g of fresh: explains the factor 0.33',
  source: `${source}, rows 18374 and 18375`,
  status,
  expected: 0.3266,
  got: () =>
    equalActiveMassG({
      massG: 1,
      from: { by: 'share', substance: 'solids', activeShare: dryMatter(F.ndb18374.waterPct), strengthShare: 1 },
      to: { by: 'share', substance: 'solids', activeShare: dryMatter(F.ndb18375.waterPct), strengthShare: 1 },
    }),
  tolerance: { absolute: 5e-5 },
  why: 'half of the fourth decimal',
})
publishedCheck({
  id: 'P-5.14',
  of: ['dosing/product-mass'],
  what: 'egg yolk that brings 8.23 g of phospholipid, lipid 26.54 % of which 31 % are phospholipids',
  source: `${source}, row 01125, with a lipid reference text for the 31 % (other sources give 5 to 8 g and 9.44 g)`,
  status,
  expected: 100,
  got: () => productMassG({ activeMassG: 8.23, activeShare: ((F.ndb01125.fatPct ?? Number.NaN) / 100) * 0.31, strengthShare: 1 }),
  tolerance: { absolute: 0.05 },
  why: '8.23 g is rounded to 0.01 g',
})
publishedCheck({
  id: 'P-5.15',
  of: ['dosing/product-mass'],
  what: 'acerola fruit that brings 1.6776 g of vitamin C (1677.6 mg per 100 g)',
  source: `${source}, row 09001`,
  status: 'published',
  expected: 100,
  got: () => productMassG({ activeMassG: 1.6776, activeShare: 0.016776, strengthShare: 1 }),
  tolerance: { relative: 1e-12 },
  why: 'exact arithmetic',
})
