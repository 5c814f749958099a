import { analyseBatches } from '@/lib/calc/analysis/analyse-batches'
import { Decimal } from '@/lib/calc/cost/decimal'
import { sameVolumeRoute } from '@/lib/calc/cost/same-volume-route'
import { specificVolumeMlPerG } from '@/lib/calc/loaf/specific-volume'
import { softerThanControl } from '@/lib/calc/staling/softer-than-control'
import { publishedCheck } from '@/tests/support/published-check'

const source = 'S. Rahman and S. Simsek, 2020, doi 10.1007/s13197-020-04390-w, table 4'
const loaves = {
  control: 605,
  'ethoxylated monoglyceride 0.5 %': 812.5,
  'gluten 5 %': 850,
  'ascorbic acid 150 ppm': 712.5,
}

// The paper gives means. Two batches as far above as below in logarithms have such a mean, and any spread.
const analysis = () =>
  analyseBatches({
    readings: Object.entries(loaves).flatMap(([arm, volume]) =>
      [0.01, -0.01].map((by, i) => ({ arm, batch: `${arm} ${i}`, loaf: '1', value: volume * Math.exp(by) })),
    ),
    arms: Object.keys(loaves),
    confidence: 0.95,
    alternative: 'two-sided',
    scale: 'log',
  })

for (const [i, arm, expected] of [
  [0, 'ethoxylated monoglyceride 0.5 %', 34.3],
  [1, 'gluten 5 %', 40.5],
  [2, 'ascorbic acid 150 ppm', 17.77],
] as const) {
  publishedCheck({
    id: 'P-5.17',
    of: ['analysis/analyse-batches'],
    what: `${arm}: volume against 605 cm³, %`,
    source,
    status: 'published inputs',
    expected,
    got: () => analysis().pctComparisons?.[i]?.pct ?? Number.NaN,
    tolerance: { absolute: 0.005 },
    why: 'half of the second decimal',
  })
}
publishedCheck({
  id: 'P-5.17',
  of: ['loaf/specific-volume'],
  what: 'control: 605 cm³ at 4.7 cm³/g is the loaf of about 129 g that the others are, here 812.5 cm³',
  source,
  status: 'published inputs',
  expected: 6.3,
  got: () => specificVolumeMlPerG({ volumeMl: 812.5, massG: 605 / 4.7 }),
  tolerance: { absolute: 0.1 },
  why: 'both are printed to 0.1, and loaves lose water unequally',
})
publishedCheck({
  id: 'P-5.17',
  of: ['cost/same-volume-route'],
  what: 'gluten 5 %, 850 cm³ where the control has 605: part of the scaling mass that would give 605 cm³',
  source,
  status: 'published inputs, 605/850 worked by hand',
  expected: 0.71176,
  got: () =>
    sameVolumeRoute({
      scalingMassG: 1,
      volumeRatio: 850 / 605,
      lowerVolumeRatio: 850 / 605,
      upperVolumeRatio: 850 / 605,
      controlPerKgMinor: new Decimal(100),
      armPerKgMinor: new Decimal(100),
      hasDeclaredWeight: false,
    }).scalingMassG,
  tolerance: { absolute: 5e-6 },
  why: 'half of the fifth decimal',
})

for (const [what, armFirmness, expected] of [
  ['ethoxylated monoglyceride 0.5 %', 1708, 46.27],
  ['gluten 5 %', 1734.5, 45.44],
  ['ascorbic acid 150 ppm', 2777, 12.65],
] as const) {
  publishedCheck({
    id: 'Q-7.4',
    of: ['staling/softer-than-control'],
    what: `${what}: ${armFirmness} mN against 3179, % softer`,
    source,
    status: 'published inputs',
    expected,
    got: () => softerThanControl({ controlFirmness: 3179, armFirmness }).softerPct,
    tolerance: { absolute: 0.005 },
    why: 'half of the second decimal',
  })
}
publishedCheck({
  id: 'Q-7.4',
  of: ['staling/softer-than-control'],
  what: 'the other way round: control firmer than 1708 mN, %',
  source,
  status: 'published inputs',
  expected: 86.12,
  got: () => softerThanControl({ controlFirmness: 3179, armFirmness: 1708 }).controlFirmerPct,
  tolerance: { absolute: 0.005 },
  why: 'half of the second decimal',
})
