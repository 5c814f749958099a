import { levain } from '@/lib/calc/preferment/levain'
import { taperedVolume } from '@/lib/calc/tin/tapered-volume'
import { publishedCheck } from '@/tests/support/published-check'

const source = 'US bread newsletter, 2023'
const wet = { levainHydrationPct: 100, starterHydrationPct: 100 }
const onFresh = () => levain({ ...wet, levainMassG: 360, starterBy: 'fresh-flour', starterPct: 20 })
const build = (levainMassG: number) => levain({ ...wet, levainMassG, starterBy: 'mix', starterPct: 20 })

for (const [what, expected, got] of [
  ['360 g at 100 %, 20 % on fresh flour: fresh flour', 163.636, () => onFresh().freshFlourG],
  ['the same: water', 163.636, () => onFresh().freshWaterG],
  ['the same: starter', 32.727, () => onFresh().starterG],
  ['the same: flour in all', 180, () => onFresh().flourInAllG],
] as const) {
  publishedCheck({
    id: 'Q-1.3',
    of: ['preferment/levain'],
    what,
    source: `${source}: inoculation is on fresh flour`,
    status: 'published inputs',
    expected,
    got,
    tolerance: { absolute: 5e-4 },
    why: 'half of the third decimal',
  })
}
for (const [what, status, expected, got] of [
  ['200 g as 1 starter : 2 flour : 2 water: starter', 'published', 40, () => build(200).starterG],
  ['the same: flour', 'published', 80, () => build(200).freshFlourG],
  ['the same: water', 'published', 80, () => build(200).freshWaterG],
  ['1000 g from those 200: starter', 'published inputs', 200, () => build(1000).starterG],
  ['1000 g from those 200: flour', 'published inputs', 400, () => build(1000).freshFlourG],
  [
    'a starter of 20 % of the build is 50 % of its fresh flour',
    'published inputs',
    50,
    () => build(200).starterOnFreshFlourPct,
  ],
] as const) {
  publishedCheck({
    id: 'Q-1.5',
    of: ['preferment/levain'],
    what,
    source,
    status,
    expected,
    got,
    tolerance: { relative: 1e-12 },
    why: 'exact arithmetic',
  })
}

const MM = 25.4
const tin = () =>
  taperedVolume({
    topLengthMm: 8.5 * MM,
    topWidthMm: 4.5 * MM,
    baseLengthMm: 7.5 * MM,
    baseWidthMm: 3.5 * MM,
    depthMm: 2.6 * MM,
  })
// The source prints 1440 mL for its tin, filled; measured sides leave out rim and rounding.
for (const [what, expected, got] of [
  ['tin of 8.5 × 4.5 in at the top, 7.5 × 3.5 in at the base, 2.6 in deep, mL', 1366.95, () => tin().tinVolumeMl],
  ['the same, top times depth, mL', 1629.7, () => tin().topTimesDepthMl],
] as const) {
  publishedCheck({
    id: 'Q-2.6',
    of: ['tin/tapered-volume'],
    what,
    source: `${source} (dimensions); prismoidal formula`,
    status: 'published inputs',
    expected,
    got,
    tolerance: { absolute: 0.05 },
    why: 'half of the first decimal',
  })
}
