import { fitAdditive } from '@/lib/calc/analysis/fit-additive'
import { studentizedRangeTail } from '@/lib/calc/distributions/studentized-range-tail'
import { publishedCheck } from '@/tests/support/published-check'

const source =
  'J. Lawson, Design and Analysis of Experiments with R, 2015, chapter 2: height of bread after 35, 40 and 45 min of rising'
const heights = {
  '35': [4.5, 5, 5.5, 6.75],
  '40': [6.5, 6.5, 10.5, 9.5],
  '45': [9.75, 8.75, 6.5, 8.25],
}
const fit = () =>
  fitAdditive({
    rows: Object.entries(heights).flatMap(([arm, values]) => values.map((y) => ({ arm, y }))),
    arms: Object.keys(heights),
    confidence: 0.95,
  })

for (const [what, expected, got, digits] of [
  ['mean after 35 min', 5.4375, () => fit().armMeans[0]!.estimate, 4],
  ['mean after 40 min', 8.25, () => fit().armMeans[1]!.estimate, 2],
  ['mean after 45 min', 8.3125, () => fit().armMeans[2]!.estimate, 4],
  ['residual standard deviation', 1.531, () => fit().residualSd, 3],
  ['degrees of freedom', 9, () => fit().residualDf, 0],
  ['F', 4.602, () => fit().anova[0]!.f!, 3],
  ['p', 0.042, () => fit().anova[0]!.p!, 4],
  ['unadjusted p of 35 against 40 min', 0.0288, () => fit().differences[0]!.p, 4],
] as const) {
  publishedCheck({
    id: 'P-6.11',
    of: ['analysis/fit-additive'],
    what,
    source,
    status: 'published; raw data from memory, which give every printed figure',
    expected,
    got,
    tolerance: { absolute: 0.5 * 10 ** -digits },
    why: 'half of the last digit printed',
  })
}
publishedCheck({
  id: 'P-6.11',
  of: ['distributions/studentized-range-tail'],
  what: "Tukey's p of 35 against 40 min",
  source,
  status: 'published inputs',
  expected: 0.068,
  got: () => studentizedRangeTail({ range: Math.abs(fit().differences[0]!.t) * Math.SQRT2, groups: 3, df: 9 }).upper,
  tolerance: { absolute: 5e-4 },
  why: 'half of the third decimal',
})
