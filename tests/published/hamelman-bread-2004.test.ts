import { massesFromPercentages } from '@/lib/calc/formula/masses-from-percentages'
import { atMoistureBasisPct } from '@/lib/calc/formula/at-moisture-basis'
import { yeastEquivalentG } from '@/lib/calc/dosing/yeast-equivalent'
import { differenceFToC } from '@/lib/calc/temperature/temperature-difference'
import { waterTempByFactor } from '@/lib/calc/temperature/water-temp-by-factor'
import { publishedCheck } from '@/tests/support/published-check'

const source = 'J. Hamelman, Bread, 2004'

publishedCheck({
  id: 'P-1.4',
  of: ['formula/masses-from-percentages'],
  what: 'conversion factor for 150 lb at a formula total of 168.25 %',
  source: `${source}, baker's percentage chapter, as reproduced on the web`,
  status: 'published',
  expected: 0.89153,
  got: () =>
    massesFromPercentages({
      lines: [
        { id: 'flour', pctFlour: 100, isFlour: true },
        { id: 'rest', pctFlour: 68.25, isFlour: false },
      ],
      target: { by: 'dough-mass', doughMassG: 150 },
    }).flourMassG / 100,
  tolerance: { absolute: 5e-6 },
  why: 'half of the fifth decimal; the source then rounds up to 0.9',
})
publishedCheck({
  id: 'P-1.4',
  of: ['formula/masses-from-percentages'],
  what: 'dough from 90 lb of flour after the source rounded up',
  source: `${source}, baker's percentage chapter, as reproduced on the web`,
  status: 'published',
  expected: 151.425,
  got: () =>
    massesFromPercentages({
      lines: [
        { id: 'flour', pctFlour: 100, isFlour: true },
        { id: 'rest', pctFlour: 68.25, isFlour: false },
      ],
      target: { by: 'flour', flourMassG: 90 },
    }).doughMassG,
  tolerance: { relative: 1e-9 },
  why: 'exact arithmetic',
})
publishedCheck({
  id: 'P-3.3',
  of: ['formula/at-moisture-basis'],
  what: 'factor from 13.65 % moisture to 14 % basis',
  source: `${source}, moisture section`,
  status: 'published inputs',
  expected: 0.995947,
  got: () => atMoistureBasisPct({ valuePct: 1, moisturePct: 13.65, basisPct: 14 }),
  tolerance: { absolute: 5e-7 },
  why: 'half of the sixth decimal',
})
for (const [to, expected] of [
  ['active-dry', 12],
  ['instant', 9.9],
] as const) {
  publishedCheck({
    id: 'P-1.8',
    of: ['dosing/yeast-equivalent'],
    what: `30 g of fresh yeast as ${to}`,
    source: `${source}, yeast conversions`,
    status: 'published',
    expected,
    got: () => yeastEquivalentG({ massG: 30, from: 'fresh', to, convention: 'hamelman' }),
    tolerance: { relative: 1e-9 },
    why: 'exact arithmetic on printed factors',
  })
}
publishedCheck({
  id: 'P-4.3',
  of: ['temperature/water-temp-by-factor'],
  what: 'water with a pre-ferment: dough 76 °F; flour 68, room 72, pre-ferment 70, friction 26',
  source: `${source}, desired dough temperature (rule)`,
  status: 'published inputs',
  expected: 68,
  got: () =>
    waterTempByFactor({
      wantedTemp: 76,
      roomTemp: 72,
      flourTemp: 68,
      preFermentTemp: 70,
      frictionFactor: 26,
      unit: 'fahrenheit',
    }),
  tolerance: { relative: 1e-12 },
  why: 'exact arithmetic',
})
publishedCheck({
  id: 'P-4.4',
  of: ['temperature/temperature-difference'],
  what: 'that friction factor in °C, as a difference',
  source: 'arithmetic: a difference of temperature changes by 5/9 without the 32',
  status: 'published inputs',
  expected: 14.444,
  got: () => differenceFToC(26),
  tolerance: { absolute: 5e-4 },
  why: 'half of the third decimal',
})
