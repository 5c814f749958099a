import { tukeyKramer } from '@/lib/calc/comparison/tukey-kramer'
import { checkCase } from '@/tests/support/published-case'
import cases from './data/warpbreaks-tukey.json'

for (const c of cases) {
  const got = () => tukeyKramer({ rows: c.inputs.rows, confidence: c.inputs.confidence })
  checkCase(c, ['comparison/tukey-kramer'], 'the second route is a quadrature', [
    ['df', c.expected.df, () => got().df],
    ['critical value', c.expected.q_critical, () => got().criticalValue],
    ...c.expected.comparisons.flatMap((expected): [string, number, () => number][] => {
      const [to, from] = expected.pair.split(' - ')
      const pair = () => got().pairs.find((row) => row.from === from && row.to === to)!
      return [
        [expected.pair, expected.estimate, () => pair().difference],
        [`${expected.pair}, low`, expected.ci_lower, () => pair().low],
        [`${expected.pair}, high`, expected.ci_upper, () => pair().high],
        [`${expected.pair}, p`, expected.p_adjusted, () => pair().pAdjusted],
      ]
    }),
  ])
}
