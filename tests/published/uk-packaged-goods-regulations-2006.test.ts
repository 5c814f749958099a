import { acceptBatchMean } from '@/lib/calc/net-weight/accept-batch-mean'
import { judgeLot } from '@/lib/calc/net-weight/judge-lot'
import { publishedCheck } from '@/tests/support/published-check'

const regulations = 'The Weights and Measures (Packaged Goods) Regulations 2006 (SI 2006/659), schedule 2'

/** A sample whose mean is so many of its spreads (divisor n − 1) from 500 g. */
function sampleOf(n: number, spreadsBelow: number): number[] {
  const sdG = 4
  const step = sdG * Math.sqrt((n - 1) / n)
  return Array.from({ length: n }, (_, i) => 500 - spreadsBelow * sdG + (i % 2 === 0 ? step : -step))
}

for (const [n, batchPackages, isDestructive, printed, paragraph] of [
  [30, 400, false, 0.503, '4.5'],
  [50, 501, false, 0.379, '4.5'],
  [20, 400, true, 0.64, '4.6'],
] as const) {
  // The printed factor is rounded: half a unit of its last digit to either side.
  for (const [side, spreadsBelow, expected] of [
    ['just inside', printed - 0.0005, 'accepted'],
    ['just outside', printed + 0.0005, 'refused'],
  ] as const) {
    publishedCheck({
      of: ['net-weight/accept-batch-mean'],
      what: `mean of ${n} packages ${side} nominal less ${printed} spreads`,
      source: `${regulations}, ${paragraph}`,
      status: 'published rule, packages invented',
      expected,
      got: () =>
        acceptBatchMean({ batchPackages, isDestructive, nominalG: 500, contentsG: sampleOf(n, spreadsBelow) })
          .isMeanAccepted
          ? 'accepted'
          : 'refused',
    })
  }
  publishedCheck({
    of: ['net-weight/accept-batch-mean'],
    what: `${n} packages that all hold 500 g: the mean is at the limit, which is enough (≥)`,
    source: `${regulations}, ${paragraph}`,
    status: 'published rule, packages invented',
    expected: 'accepted',
    got: () =>
      acceptBatchMean({ batchPackages, isDestructive, nominalG: 500, contentsG: new Array<number>(n).fill(500) })
        .isMeanAccepted
        ? 'accepted'
        : 'refused',
  })
}
for (const [meanG, expected] of [
  [500, 'accepted'],
  [499.9, 'refused'],
] as const) {
  publishedCheck({
    of: ['net-weight/judge-lot'],
    what: `a batch of 60, all weighed: mean ${meanG} g of 500 g`,
    source: `${regulations}, 4.7`,
    status: 'published rule, packages invented',
    expected,
    got: () =>
      judgeLot({ nominalG: 500, contentsG: new Array<number>(60).fill(meanG) }).isMeanEnough ? 'accepted' : 'refused',
  })
}
