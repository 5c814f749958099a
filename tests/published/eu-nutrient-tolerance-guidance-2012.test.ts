import { roundDeclared } from '@/lib/calc/label/round-declared'
import { publishedCheck } from '@/tests/support/published-check'

for (const [nutrient, value, expected] of [
  ['energy-kj', 1043.5, 1044],
  ['energy-kcal', 247.4, 247],
  ['fat', 12.6, 13],
  ['fat', 9.46, 9.5],
  ['fat', 0.51, 0.5],
  ['carbohydrate', 48.5, 49],
  ['sugars', 0.5, 0],
  ['protein', 8.04, 8],
  ['fibre', 3.25, 3.3],
  ['saturates', 0.11, 0.1],
  ['saturates', 0.1, 0],
  ['salt', 1.163, 1.2],
  ['salt', 0.997, 1],
  ['salt', 0.087, 0.09],
  ['salt', 0.0125, 0],
] as const) {
  publishedCheck({
    of: ['label/round-declared'],
    what: `${nutrient}, ${value} in 100 g, as declared`,
    source:
      'European Commission, Guidance document on tolerances for nutrient values, December 2012, table 4, as reproduced by a Greek food consultancy',
    status: 'published rule, figures invented',
    expected,
    got: () => roundDeclared({ nutrient, value }).roundedValue,
    tolerance: expected === 0 ? { absolute: 0 } : { relative: 1e-12 },
    why: 'the rule leaves one figure',
  })
}
