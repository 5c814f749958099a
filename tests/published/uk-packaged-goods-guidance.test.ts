import { averageWeightCheck } from '@/lib/calc/net-weight/average-weight-check'
import { judgeLot } from '@/lib/calc/net-weight/judge-lot'
import { publishedCheck } from '@/tests/support/published-check'

const source = 'UK trading standards guidance on the Weights and Measures (Packaged Goods) Regulations 2006'
const others = (n: number, contentG: number) => new Array<number>(n).fill(contentG)

for (const [what, contentsG, expected] of [
  ['one loaf in 40 below 785 g', [...others(39, 801), 784], 1],
  ['two loaves in 40 below 785 g', [...others(38, 802), 784, 784], 0],
  ['one loaf in 400 below 770 g', [...others(399, 801), 769], 0],
  ['a mean of 799.9 g', others(40, 799.9), 0],
] as const) {
  publishedCheck({
    id: 'P-10.2',
    of: ['net-weight/judge-lot'],
    what: `800 g loaves, ${what}: keeps the three rules (1) or not (0)`,
    source,
    status: 'published rules, lots invented',
    expected,
    got: () => Number(judgeLot({ nominalG: 800, contentsG }).keepsAllRules),
    tolerance: { absolute: 0 },
    why: 'yes or no',
  })
}
publishedCheck({
  id: 'P-10.2',
  of: ['net-weight/average-weight-check'],
  what: '500 g at a spread of 8 g: least mean so that 2.5 % are below 485 g, 485 + 1.96 · 8',
  source,
  status: 'published rule, worked with 1.96',
  expected: 500.68,
  got: () =>
    averageWeightCheck({
      nominalG: 500,
      contentsG: Array.from({ length: 20 }, (_, i) => 503 + (i % 2 === 0 ? 8 : -8) * Math.sqrt(19 / 20)),
    }).leastMeanG,
  tolerance: { absolute: 5e-3 },
  why: '1.96 is 1.95996 to two decimals',
})
publishedCheck({
  id: 'P-10.3',
  of: ['net-weight/judge-lot'],
  what: 'unwrapped bread counts as a package under the UK rules: every judgement says that this differs by country',
  source,
  status: 'published',
  expected: 'package-differs-by-country',
  got: () => judgeLot({ nominalG: 800, contentsG: [800] }).cautions[0],
})
