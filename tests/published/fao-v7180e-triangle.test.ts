import { leastCorrect } from '@/lib/calc/panel/least-correct'
import { leastCorrectTable } from '@/lib/calc/panel/least-correct-table'
import { publishedCheck } from '@/tests/support/published-check'

/** Tasters, fewest right at 5 % and at 1 %. */
const rows = [
  [6, 5, 6],
  [12, 8, 9],
  [18, 10, 12],
  [24, 13, 15],
  [30, 15, 17],
  [36, 18, 20],
  [48, 22, 25],
  [60, 27, 30],
] as const
const table = leastCorrectTable({ test: 'triangle', fromTasters: 3, toTasters: 96, alphas: [0.05, 0.01] })

for (const [tasters, ...expected] of rows) {
  for (const [i, alpha] of [0.05, 0.01].entries()) {
    publishedCheck({
      id: 'P-9.1',
      of: i === 0 ? ['panel/least-correct'] : ['panel/least-correct-table'],
      what: `triangle test, ${tasters} tasters, fewest right at ${alpha}`,
      source: 'FAO document V7180E, appendix A',
      status: 'published',
      expected: expected[i]!,
      got: () =>
        i === 0
          ? (leastCorrect({ test: 'triangle', tasters, alpha }).correct ?? NaN)
          : (table.find((row) => row.tasters === tasters && row.alpha === alpha)?.correct ?? NaN),
      tolerance: 0,
      why: 'a count',
    })
  }
}
