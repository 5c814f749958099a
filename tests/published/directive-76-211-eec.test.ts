import { acceptBatchMean } from '@/lib/calc/net-weight/accept-batch-mean'
import { samplePackages } from '@/lib/calc/net-weight/sample-packages'
import { tolerableNegativeErrorG } from '@/lib/calc/net-weight/tolerable-negative-error'
import { publishedCheck } from '@/tests/support/published-check'

const directive = 'Council Directive 76/211/EEC'

for (const [nominalG, expected, part] of [
  [50, 4.5, 'errorG'],
  [100, 4.5, 'errorG'],
  [200, 9, 'errorG'],
  [250, 9, 'errorG'],
  [250, 241, 'lowerLimitG'],
  [250, 232, 'absoluteLimitG'],
  [450, 13.5, 'errorG'],
  [800, 15, 'errorG'],
  [800, 785, 'lowerLimitG'],
  [800, 770, 'absoluteLimitG'],
  [2000, 30, 'errorG'],
  [12_000, 150, 'errorG'],
] as const) {
  publishedCheck({
    id: 'P-10.1',
    of: ['net-weight/tolerable-negative-error'],
    what: `${nominalG} g: ${{ errorG: 'tolerable negative error', lowerLimitG: 'nominal less it', absoluteLimitG: 'nominal less twice it' }[part]}`,
    source: `${directive}, Annex I, 2.4`,
    status: nominalG > 1000 ? 'from memory' : 'published',
    expected,
    got: () => tolerableNegativeErrorG({ nominalG })[part],
    tolerance: { relative: 1e-12 },
    why: 'the table itself',
  })
}
publishedCheck({
  id: 'P-10.1',
  of: ['net-weight/tolerable-negative-error'],
  what: '453 g: 3 % is 13.59 g, rounded up to a tenth',
  source: `${directive}, Annex I, 2.5`,
  status: 'from memory',
  expected: 13.6,
  got: () => tolerableNegativeErrorG({ nominalG: 453 }).errorG,
  tolerance: { relative: 1e-12 },
  why: 'exact arithmetic',
})

for (const [n, expected] of [
  [20, 0.64],
  [30, 0.503],
  [50, 0.379],
] as const) {
  publishedCheck({
    id: 'P-10.4',
    of: ['net-weight/accept-batch-mean'],
    what: `spreads that the mean of ${n} packages may be short by, t₀.₉₉₅/√n`,
    source: `${directive}, Annex II, 2.3`,
    status: 'published rule, factors worked',
    expected,
    got: () => acceptBatchMean({ nominalG: 500, contentsG: Array.from({ length: n }, (_, i) => 500 + (i % 3)) }).factor,
    tolerance: { absolute: 5e-4 },
    why: 'half of the third decimal',
  })
}
for (const [batchPackages, isDestructive, expected] of [
  [80, false, 80],
  [100, false, 30],
  [500, false, 30],
  [501, false, 50],
  [2000, true, 20],
] as const) {
  publishedCheck({
    id: 'P-10.4',
    of: ['net-weight/sample-packages'],
    what: `packages checked of ${batchPackages}${isDestructive ? ', destroyed by it' : ''}`,
    source: `${directive}, Annex II, 2.1.3, 2.2.2 and 2.3`,
    status: 'published',
    expected,
    got: () => samplePackages({ batchPackages, isDestructive }),
    tolerance: { absolute: 0 },
    why: 'a count',
  })
}
