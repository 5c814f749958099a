import { doughForTin } from '@/lib/calc/tin/dough-for-tin'
import { taperedVolume } from '@/lib/calc/tin/tapered-volume'
import { publishedCheck } from '@/tests/support/published-check'

const source = 'Kitchen page on pullman tins'
const ML_PER_IN3 = 16.387064
const side = {
  topLengthMm: 13 * 25.4,
  topWidthMm: 4 * 25.4,
  baseLengthMm: 13 * 25.4,
  baseWidthMm: 4 * 25.4,
  depthMm: 4 * 25.4,
}

publishedCheck({
  id: 'Q-2.2',
  of: ['tin/tapered-volume'],
  what: 'pullman of 13 × 4 × 4 in, mL',
  source,
  status: 'published',
  expected: 3408.5,
  got: () => taperedVolume(side).tinVolumeMl,
  tolerance: { absolute: 0.05 },
  why: 'half of the first decimal',
})
for (const [gPerIn3, expected] of [
  [5, 1040],
  [5.5, 1144],
  [6, 1248],
] as const) {
  publishedCheck({
    id: 'Q-2.2',
    of: ['tin/dough-for-tin'],
    what: `208 in³ at ${gPerIn3} g of white dough for an in³`,
    source,
    status: 'published; common practice',
    expected,
    got: () => doughForTin({ tinVolumeMl: 208 * ML_PER_IN3, tinMlPerG: ML_PER_IN3 / gPerIn3 }).doughMassG,
    tolerance: { relative: 1e-9 },
    why: 'exact arithmetic',
  })
}
