import { leastCorrect } from '@/lib/calc/panel/least-correct'
import { mostCorrect } from '@/lib/calc/panel/most-correct'
import { similarity } from '@/lib/calc/panel/similarity'
import { publishedCheck } from '@/tests/support/published-check'

const ISO = 'ISO 5495 (GOST R 53161-2008)'

/** Tasters, fewest right at 5 % and at 1 %. */
const oneSided = [
  [10, 9, 10],
  [20, 15, 16],
  [36, 24, 26],
  [60, 37, 40],
] as const
for (const [tasters, ...expected] of oneSided) {
  for (const [i, alpha] of [0.05, 0.01].entries()) {
    publishedCheck({
      id: 'P-9.3',
      of: ['panel/least-correct'],
      what: `paired comparison, one-sided, ${tasters} tasters, fewest right at ${alpha}`,
      source: `${ISO}, table A.1`,
      status: 'published',
      expected: expected[i]!,
      got: () => leastCorrect({ test: 'paired', tasters, alpha }).correct ?? NaN,
      tolerance: 0,
      why: 'a count',
    })
  }
}

for (const [tasters, expected] of [
  [10, 9],
  [15, 12],
  [20, 15],
  [30, 21],
  [40, 27],
] as const) {
  publishedCheck({
    id: 'P-9.3',
    of: ['panel/least-correct'],
    what: `paired comparison, two-sided, ${tasters} tasters, fewest on the larger side at 0.05`,
    source: `${ISO}, rule of the two-sided table`,
    status: 'published inputs',
    expected,
    got: () => leastCorrect({ test: 'paired-two-sided', tasters, alpha: 0.05 }).correct ?? NaN,
    tolerance: 0,
    why: 'a count',
  })
}

/** Error, then most right at a margin of 20, 30, 40 and 50 %; 132 tasters. */
const mostOf132 = [
  [0.01, 65, 72, 79, 86],
  [0.05, 69, 76, 83, 90],
  [0.1, 71, 78, 85, 92],
  [0.2, 73, 80, 87, 94],
] as const
for (const [error, ...expected] of mostOf132) {
  for (const [i, marginShare] of [0.2, 0.3, 0.4, 0.5].entries()) {
    publishedCheck({
      of: ['panel/most-correct'],
      what: `similarity, 132 tasters, error ${error}, margin ${marginShare}: most right`,
      source: `${ISO}, end of table A.3`,
      status: 'published',
      expected: expected[i]!,
      got: () => mostCorrect({ test: 'paired', tasters: 132, marginShare, confidence: 1 - error }) ?? NaN,
      tolerance: 0,
      why: 'a count',
    })
  }
}

publishedCheck({
  of: ['panel/similarity'],
  what: 'upper limit of those who can tell, 40 right of 60, error 0.05: 2 x/n − 1 + 2 z √((n x − x²)/n³), z 1.64',
  source: `${ISO}, note 1 to table A.3`,
  status: 'published inputs',
  expected: (2 * 40) / 60 - 1 + 2 * 1.64 * Math.sqrt((60 * 40 - 40 ** 2) / 60 ** 3),
  got: () =>
    similarity({ test: 'paired', tasters: 60, correct: 40, marginShare: 0.5, confidence: 0.95, method: 'normal' })
      .highShare,
  tolerance: { absolute: 0.005 * 2 * Math.sqrt((60 * 40 - 40 ** 2) / 60 ** 3) },
  why: 'z is printed with two decimals',
})
