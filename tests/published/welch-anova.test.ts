import { welchAnova } from '@/lib/calc/comparison/welch-anova'
import { checkCase } from '@/tests/support/published-case'
import cases from './data/welch-anova.json'

for (const c of cases) {
  const got = () =>
    welchAnova({ rows: c.inputs.groups.flatMap((g) => g.values.map((y) => ({ arm: g.name, y }))), confidence: 0.95 })
  checkCase(c, ['comparison/welch-anova'], 'double precision', [
    ['F', c.expected.F, () => got().f],
    ['df above', c.expected.df1, () => got().df1],
    ['df below', c.expected.df2, () => got().df2],
    ['p', c.expected.p, () => got().p, c.tolerance.fields.p],
  ])
}
