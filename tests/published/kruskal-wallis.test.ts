import { kruskalWallis } from '@/lib/calc/comparison/kruskal-wallis'
import { checkCase } from '@/tests/support/published-case'
import cases from './data/kruskal-wallis.json'

for (const c of cases) {
  const got = () => kruskalWallis({ rows: c.inputs.groups.flatMap((g) => g.values.map((y) => ({ arm: g.name, y }))) })
  checkCase(c, ['comparison/kruskal-wallis'], 'double precision', [
    ['H, corrected for ties', c.expected.H, () => got().h],
    ['df', c.expected.df, () => got().df],
    ['p', c.expected.p, () => got().p],
    ...c.expected.mean_ranks.map((rank, i): [string, number, () => number] => [
      `mean rank ${i + 1}`,
      rank,
      () => got().arms[i]!.meanRank,
    ]),
  ])
}
