import { leastCorrect } from '@/lib/calc/panel/least-correct'
import { publishedCheck } from '@/tests/support/published-check'

/** Tasters, fewest right at 5 % and at 1 %. */
const rows = [
  [7, 7, 7],
  [10, 9, 10],
  [12, 10, 11],
  [20, 15, 16],
  [24, 17, 19],
  [36, 24, 26],
  [60, 37, 40],
] as const

for (const [tasters, ...expected] of rows) {
  for (const [i, alpha] of [0.05, 0.01].entries()) {
    publishedCheck({
      id: 'P-9.2',
      of: ['panel/least-correct'],
      what: `duo-trio test, ${tasters} tasters, fewest right at ${alpha}`,
      source: 'ISO 10399, table A.1 (GOST edition, 2015)',
      status: 'published',
      expected: expected[i]!,
      got: () => leastCorrect({ test: 'duo-trio', tasters, alpha }).correct ?? NaN,
      tolerance: 0,
      why: 'a count',
    })
  }
}
