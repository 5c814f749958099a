import { Decimal } from '@/lib/calc/cost/decimal'
import { batchCost } from '@/lib/calc/cost/batch-cost'
import { breakEvenPrice } from '@/lib/calc/cost/break-even-price'
import { costDifference } from '@/lib/calc/cost/cost-difference'
import { priceOnDay } from '@/lib/calc/cost/price-on-day'
import { activityProductMassG } from '@/lib/calc/dosing/activity-product-mass'
import { flatFormula } from '@/lib/calc/formula/flat-formula'
import { formulaTotals } from '@/lib/calc/formula/formula-totals'
import { hydration } from '@/lib/calc/formula/hydration'
import { heightToWidth } from '@/lib/calc/loaf/height-to-width'
import { seedBulkDensityGPerMl } from '@/lib/calc/loaf/seed-bulk-density'
import { volumeBySeedMassMl } from '@/lib/calc/loaf/volume-by-seed-mass'
import { threeDigitCodes } from '@/lib/calc/plan/three-digit-codes'
import { ICE_CONSTANTS } from '@/lib/calc/temperature/ice-heat'
import { iceMassG } from '@/lib/calc/temperature/ice-mass'
import { waterSource } from '@/lib/calc/temperature/water-source'
import type { CalcId } from '@/lib/calc/catalogue'
import { line, straightDough } from '@/tests/support/formula-samples'
import { publishedCheck } from '@/tests/support/published-check'

/** Rules that everybody in the trade uses and no authority states; figures made up, answers worked by hand. */
function rule(id: string | undefined, of: CalcId, what: string, expected: number, got: () => number): void {
  publishedCheck({
    ...(id === undefined ? {} : { id }),
    of: [of],
    what,
    source: 'rule of the trade',
    status: 'common practice, no source',
    expected,
    got,
    tolerance: { relative: 1e-12 },
    why: 'exact arithmetic',
  })
}

rule(
  'P-2.1',
  'formula/hydration',
  'German pouring liquid: oil is poured and counts, quark does not',
  64,
  () =>
    hydration(
      straightDough(
        line('flour', 'flour', 500),
        line('water', 'water', 300),
        line('oil', 'fat', 20, null, { isPouredLiquid: true }),
        line('quark', 'dairy', 80),
      ),
      'poured-liquids',
    ).pctFlour,
)

const scalded = flatFormula([
  { id: 'flour', massG: 950, isFlour: true },
  { id: 'water', massG: 400, kind: 'water' },
  { id: 'flour of the roux', massG: 50, isFlour: true, stage: 'scald' },
  { id: 'water of the roux', massG: 250, kind: 'water', stage: 'scald' },
])
rule('P-12.1', 'formula/formula-totals', 'water roux of 1 flour to 5 water: its flour is part of the 100 %', 0.05, () =>
  formulaTotals(scalded).stages.reduce((sum, stage) => sum + (stage.kind === 'scald' ? stage.flourShare : 0), 0),
)
rule(
  'P-12.1',
  'formula/hydration',
  'water roux of 1 flour to 5 water: its water counts in the hydration',
  65,
  () => hydration(scalded, 'plain-water').pctFlour,
)

const TRADE_ICE = { ...ICE_CONSTANTS, latentHeatJPerG: 80 * ICE_CONSTANTS.waterSpecificHeatJPerGK }
rule(
  'P-4.5',
  'temperature/ice-mass',
  'ice = water × (tap − wanted) / (tap + 112) in °F, here 75 to 45 °F',
  30 / 187,
  () =>
    iceMassG({
      waterMassG: 1,
      tapTempC: (43 * 5) / 9,
      wantedTempC: (13 * 5) / 9,
      iceTempC: 0,
      convention: 'replacing',
      constants: TRADE_ICE,
    }),
)
rule(
  undefined,
  'temperature/water-source',
  'mixing rule (alligation): 50 °C and 10 °C mixed to 30 °C are half and half',
  3000,
  () => {
    const q = {
      waterMassG: 6000,
      wantedTempC: 30,
      coldTempC: 10,
      hotTempC: 50,
      mostTempC: 45,
      iceTempC: 0,
      mostIceShare: 0.5,
    }
    const found = waterSource({ ...q, convention: 'replacing', constants: ICE_CONSTANTS })
    return found.outcome === 'mix' ? found.hotMassG : Number.NaN
  },
)
rule(
  undefined,
  'dosing/activity-product-mass',
  '5000 units a kg on 10 kg of flour, from 20 000 units a g at four fifths of its strength',
  3.125,
  () => {
    const activity = { method: 'assay', unit: 'units' }
    return activityProductMassG({
      unitsPerKgFlour: 5000,
      wanted: activity,
      flourMassG: 10_000,
      product: { activity, unitsPerG: 20_000, strengthShare: 0.8 },
    })
  },
)

rule(undefined, 'loaf/seed-bulk-density', 'seed weighed out of a measure of 1 L three times', 0.67, () =>
  seedBulkDensityGPerMl({ fillingMassesG: [668, 670, 672], boxVolumeMl: 1000 }),
)
rule(undefined, 'loaf/volume-by-seed-mass', 'the seed that a loaf keeps out, over its bulk density', 2000, () =>
  volumeBySeedMassMl({ seedMassFullG: 2680, seedMassWithLoafG: 1340, bulkDensityGPerMl: 0.67 }),
)
rule(undefined, 'loaf/height-to-width', 'a hearth loaf of 90 by 150 mm', 0.6, () =>
  heightToWidth({ heightMm: 90, widthMm: 150 }),
)
rule(
  'P-9.9',
  'plan/three-digit-codes',
  '900 three-digit codes are to be had, none twice',
  900,
  () => new Set(threeDigitCodes({ seed: 'a', count: 900 })).size,
)

const flourPrices = [
  { validFrom: '2031-04-01', perKgMinor: '90', currency: 'EUR' },
  { validFrom: '2031-01-01', perKgMinor: '80', currency: 'EUR' },
]
for (const [day, perKg] of [
  ['2031-03-31', 80],
  ['2031-04-01', 90],
] as const) {
  rule(undefined, 'cost/price-on-day', `a price holds from its day until the next: ${day}`, perKg, () =>
    Number(priceOnDay({ prices: flourPrices, day })?.perKgMinor),
  )
}
const cost = (day: string) =>
  batchCost({
    day,
    lines: [
      { lineId: 'flour', name: 'flour', massG: 10_000, prices: flourPrices },
      {
        lineId: 'malt',
        name: 'malt',
        massG: 150,
        prices: [{ validFrom: '2031-01-01', perKgMinor: '400', currency: 'EUR' }],
      },
    ],
  }).totalMinor
rule(undefined, 'cost/batch-cost', '10 kg at 80 and 150 g at 400 cents a kg', 860, () => cost('2031-02-01').toNumber())
rule(
  undefined,
  'cost/cost-difference',
  'the same with flour at 90, in % of before',
  (100 * 100) / 860,
  () =>
    costDifference({ controlMinor: cost('2031-02-01'), armMinor: cost('2031-05-01') }).differencePct?.toNumber() ??
    Number.NaN,
)
rule(
  undefined,
  'cost/break-even-price',
  '50 pieces worth 2 cents more each pay for 100 g at 1000 cents a kg',
  1000,
  () => {
    const found = breakEvenPrice({
      controlPerGoodPieceMinor: new Decimal(20),
      gainPerGoodPieceMinor: new Decimal(2),
      armRestMinor: new Decimal(1000),
      armGoodPieces: 50,
      addedMassG: 100,
    })
    return found.outcome === 'price' ? found.perKgMinor.toNumber() : Number.NaN
  },
)
