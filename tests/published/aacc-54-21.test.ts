import { correctForMoisture } from '@/lib/calc/formula/correct-for-moisture'
import { equalDryFlourMassG } from '@/lib/calc/formula/equal-dry-flour-mass'
import { farinographAbsorption } from '@/lib/calc/formula/farinograph-absorption'
import { publishedCheck } from '@/tests/support/published-check'

const source = 'AACC 54-21, 14 % moisture basis'

for (const [what, expected, flourMassG, toMoisturePct] of [
  ['300 g at 14 %, flour at 12.0 %', 293.18, 300, 12],
  ['300 g at 14 %, flour at 13.36 %', 297.78, 300, 13.36],
  ['100 g at 14 %, flour at 10.74 %', 96.348, 100, 10.74],
] as const) {
  publishedCheck({
    id: 'P-3.5',
    of: ['formula/equal-dry-flour-mass'],
    what,
    source,
    status: 'published inputs',
    expected,
    got: () => equalDryFlourMassG({ flourMassG, fromMoisturePct: 14, toMoisturePct }),
    tolerance: { relative: 2e-5 },
    why: 'worked result given to five figures',
  })
}
for (const [what, expected, waterMassG, moisturePct] of [
  ['60 % at 14 %, flour now at 12 %', 63.721, 60, 12],
  ['62 % at 14 %, flour now at 15 %', 60.116, 62, 15],
] as const) {
  publishedCheck({
    id: 'P-3.6',
    of: ['formula/correct-for-moisture'],
    what: `absorption on flour as it is: ${what}`,
    source: 'mass balance at constant dough composition, on the 14 % basis of AACC 54-21',
    status: 'published inputs',
    expected,
    got: () => correctForMoisture({ flourMassG: 100, waterMassG, moisturePct, basisPct: 14 }).waterPctFlour,
    tolerance: { absolute: 5e-4 },
    why: 'half of the third decimal',
  })
}
publishedCheck({
  id: 'P-3.7',
  of: ['formula/farinograph-absorption'],
  what: 'absorption, 300 g bowl, 294.5 g flour, 183.2 mL',
  source: 'AACC 54-21, ISO 5530-1',
  status: 'from memory',
  expected: 59.233,
  got: () =>
    farinographAbsorption({ bowlG: 300, flourMassG: 294.5, waterMl: 183.2, consistencyUnits: 500 }).absorptionPct,
  tolerance: { absolute: 5e-4 },
  why: 'half of the third decimal',
})
publishedCheck({
  id: 'P-3.7',
  of: ['formula/farinograph-absorption'],
  what: 'absorption, 50 g bowl, 49.1 g flour, 30.8 mL',
  source: 'AACC 54-21, ISO 5530-1',
  status: 'from memory',
  expected: 59.8,
  got: () => farinographAbsorption({ bowlG: 50, flourMassG: 49.1, waterMl: 30.8, consistencyUnits: 500 }).absorptionPct,
  tolerance: { relative: 1e-9 },
  why: 'exact arithmetic',
})
