import { describe, expect, test } from 'vitest'
import { friedman } from '@/lib/calc/panel/friedman'
import { pageTrend } from '@/lib/calc/panel/page-trend'
import { scoresOf } from '@/tests/support/panel-scores'
import { publishedCheck } from '@/tests/support/published-check'
import cases from './data/ranking-tests.json'

for (const { title, inputs, expected, ...one } of cases) {
  describe(title, () => {
    const scores = scoresOf(inputs.matrix)
    const check = (of: 'panel/friedman' | 'panel/page-trend', what: string, value: number, got: () => number | null) =>
      publishedCheck({
        of: [of],
        what,
        source: one.source ?? (of === 'panel/friedman' ? 'M. Friedman, JASA 32, 1937' : 'E. B. Page, JASA 58, 1963'),
        status: `computed with ${one.computedWith}; second route: ${one.checkedWith}`,
        expected: value,
        got: () => got() ?? NaN,
        tolerance: one.tolerance.rel,
        why: 'double precision',
      })
    if (expected.chi2 !== undefined) {
      const got = () => friedman({ scores, alpha: inputs.alpha! })
      check('panel/friedman', 'chi-squared', expected.chi2, () => got().chiSquared)
      check('panel/friedman', 'degrees of freedom', expected.df, () => got().df)
      check('panel/friedman', 'p', expected.p, () => got().p)
      check('panel/friedman', 'F of Iman and Davenport', expected.F_iman_davenport, () => got().f)
      check('panel/friedman', 'its p', expected.p_iman_davenport, () => got().pOfF)
      check('panel/friedman', 'least significant difference', expected.lsd_rank_sum, () => got().leastDifference)

      test('rank sums and significant pairs', () => {
        const { rankSums, pairs } = got()
        expect(rankSums.map(({ rankSum }) => rankSum)).toEqual(expected.rank_sums)
        const places = (name: string) => rankSums.findIndex(({ sample }) => sample === name)
        expect(
          pairs.filter(({ significant }) => significant).map(({ sample, other }) => [places(sample), places(other)]),
        ).toEqual(expected.significant_pairs)
      })
    } else {
      const got = () => pageTrend({ scores, order: ['A', 'B', 'C', 'D'] })
      check('panel/page-trend', 'L', expected.L, () => got().statistic)
      check('panel/page-trend', 'expected L', expected.expected_L, () => got().expected)
      check('panel/page-trend', 'variance of L', expected.variance_L, () => got().variance)
      check('panel/page-trend', 'z', expected.z, () => got().z)
      check('panel/page-trend', 'p, normal', expected.p_normal, () => got().pNormal)
      check('panel/page-trend', 'p, exact', expected.p_exact, () => got().pExact)

      test('rank sums', () => {
        expect(got().rankSums.map(({ rankSum }) => rankSum)).toEqual(expected.rank_sums)
      })
    }
  })
}
