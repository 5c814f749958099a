import { CalcError } from '@/lib/calc/error'
import { acceptBatchContents } from '@/lib/calc/net-weight/accept-batch-contents'
import { acceptanceChance } from '@/lib/calc/net-weight/acceptance-chance'
import { acceptancePlan } from '@/lib/calc/net-weight/acceptance-plan'
import { acceptBatchMean } from '@/lib/calc/net-weight/accept-batch-mean'
import { samplePackages } from '@/lib/calc/net-weight/sample-packages'
import { tolerableNegativeErrorG } from '@/lib/calc/net-weight/tolerable-negative-error'
import { publishedCheck } from '@/tests/support/published-check'

const directive = 'Council Directive 76/211/EEC'
const meanOf = (n: number, batchPackages: number, isDestructive: boolean) =>
  acceptBatchMean({
    batchPackages,
    isDestructive,
    nominalG: 500,
    contentsG: Array.from({ length: n }, (_, i) => 500 + (i % 3)),
  })
function takesMeanOf(n: number, batchPackages: number, isDestructive: boolean): boolean {
  try {
    return meanOf(n, batchPackages, isDestructive).factor > 0
  } catch (error) {
    if (error instanceof CalcError && error.facts.reason === 'not-the-plans-sample') return false
    throw error
  }
}

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

for (const [n, batchPackages] of [
  [30, 100],
  [30, 500],
  [50, 501],
  [50, 10_000],
  [20, 100],
] as const) {
  publishedCheck({
    id: 'P-10.4',
    of: ['net-weight/accept-batch-mean'],
    what: `a batch of ${batchPackages} is judged by the mean of ${n} packages, and of no other number`,
    source: `${directive}, Annex II, 2.3.3`,
    status: 'published',
    expected: 'all others refused',
    got: () =>
      [19, 20, 21, 29, 30, 31, 49, 50, 51].every(
        (other) => takesMeanOf(other, batchPackages, n === 20) === (other === n),
      )
        ? 'all others refused'
        : 'not so',
  })
}
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
    got: () => meanOf(n, n === 50 ? 501 : 400, n === 20).factor,
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

for (const [batchPackages, isDestructive, plan] of [
  [100, false, '30: 1/3; 30: 4/5'],
  [500, false, '30: 1/3; 30: 4/5'],
  [501, false, '50: 2/5; 50: 6/7'],
  [3200, false, '50: 2/5; 50: 6/7'],
  [3201, false, '80: 3/7; 80: 8/9'],
  [100, true, '20: 1/2'],
] as const) {
  publishedCheck({
    id: 'Q-9.1',
    of: ['net-weight/acceptance-plan'],
    what: `batch of ${batchPackages}, ${isDestructive ? 'destructive' : 'not destructive'}: packages, accept / refuse, at each stage`,
    source: 'Directive 76/211/EEC, Annex II, 2.2.1 and 2.2.2',
    status: 'published',
    expected: plan,
    got: () =>
      acceptancePlan({ batchPackages, isDestructive })
        .map((one) => `${one.packages}: ${one.acceptAt}/${one.rejectAt}`)
        .join('; '),
  })
}
const pack = (n: number, light: number) => [
  ...new Array<number>(n - light).fill(502),
  ...new Array<number>(light).fill(480),
]
for (const [what, contentsG, expected] of [
  ['first 30 have 2 below 485 g', pack(30, 2), 'take-second-sample'],
  ['2 more in the second 30', [...pack(30, 2), ...pack(30, 2)], 'accepted'],
  ['3 more in the second 30', [...pack(30, 2), ...pack(30, 3)], 'refused'],
  ['one pack of 460 g among 30', [...pack(29, 0), 460], 'refused'],
] as const) {
  publishedCheck({
    id: contentsG.some((g) => g < 470) ? 'Q-9.5' : 'Q-9.3',
    of: ['net-weight/accept-batch-contents'],
    what: `batch of 400, 500 g: ${what}`,
    source: 'Directive 76/211/EEC, Annex I, 1.3, and Annex II, 2.2.1',
    status: 'published rules, packages invented',
    expected,
    got: () => acceptBatchContents({ batchPackages: 400, isDestructive: false, nominalG: 500, contentsG }).outcome,
  })
}
publishedCheck({
  id: 'Q-9.5',
  of: ['net-weight/accept-batch-mean'],
  what: 'one empty pack among twenty of 500 g: accepted (1) or not (0)',
  source: 'Directive 76/211/EEC, Annex I, 1.3',
  status: 'published rule, packages invented',
  expected: 0,
  got: () =>
    Number(
      acceptBatchMean({
        batchPackages: 400,
        isDestructive: true,
        nominalG: 500,
        contentsG: [...new Array<number>(19).fill(510), 0],
      }).isAccepted,
    ),
  tolerance: { absolute: 0 },
  why: 'yes or no',
})

for (const [batchPackages, isDestructive, chances] of [
  [400, false, [0.95647, 0.7636, 0.27734]],
  [3200, false, [0.98486, 0.78123, 0.16662]],
  [400, true, [0.91176, 0.73584, 0.39175]],
] as const) {
  for (const [i, defectiveShare] of [0.025, 0.05, 0.1].entries()) {
    publishedCheck({
      id: 'Q-9.4',
      of: ['net-weight/acceptance-chance'],
      what: `batch of ${batchPackages}, ${isDestructive ? 'destructive' : 'not destructive'}: chance of acceptance at ${defectiveShare * 100} % too light`,
      source: `${directive}, Annex II, 2.2.1 and 2.2.2; exact binomial`,
      status: 'published plan, chance worked',
      expected: chances[i]!,
      got: () => acceptanceChance({ batchPackages, isDestructive, defectiveShare }).acceptedShare,
      tolerance: { absolute: 5e-6 },
      why: 'half of the fifth decimal',
    })
  }
}
