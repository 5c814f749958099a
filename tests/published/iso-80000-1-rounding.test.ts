import { roundToScaleG } from '@/lib/calc/weighing/round-to-scale'
import { publishedCheck } from '@/tests/support/published-check'

for (const [massG, resolutionG, expected] of [
  [12.223, 0.1, 12.2],
  [12.251, 0.1, 12.3],
  [12.275, 0.1, 12.3],
  [1223.3, 10, 1220],
  [1225.1, 10, 1230],
  [1227.5, 10, 1230],
  [12.25, 0.1, 12.3],
  [12.35, 0.1, 12.4],
  [1225, 10, 1230],
  [1235, 10, 1240],
] as const) {
  publishedCheck({
    of: ['weighing/round-to-scale'],
    what: `${massG} in steps of ${resolutionG}, a half up`,
    source: 'ISO 80000-1:2009, annex B, rounding of numbers, rule B for halves',
    status: 'from memory',
    expected,
    got: () => roundToScaleG({ massG, resolutionG }),
    tolerance: { absolute: 0 },
    why: 'a mark of the scale',
  })
}
