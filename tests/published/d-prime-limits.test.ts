import { describe, expect, test } from 'vitest'
import { dPrime } from '@/lib/calc/panel/d-prime'
import { discriminators } from '@/lib/calc/panel/discriminators'
import type { KnownAnswerTest } from '@/lib/calc/panel/types'
import { publishedCheck } from '@/tests/support/published-check'
import cases from './data/d-prime.json'

const SOURCE =
  "J. Bi, D. M. Ennis and M. O'Mahony, Journal of Sensory Studies 12, 1997; C. Clopper and E. Pearson, Biometrika 26, 1934"

for (const { title, inputs, expected, ...one } of cases) {
  describe(title, () => {
    const status = `computed with ${one.computedWith}; second route: ${one.checkedWith}`
    const asked = {
      test: inputs.test as KnownAnswerTest,
      tasters: inputs.n,
      correct: inputs.correct,
      confidence: inputs.confidence,
    }
    const got = () => dPrime(asked)
    const check = (what: string, value: number, of: () => number | null, tolerance = one.tolerance.rel) =>
      publishedCheck({
        of: ['panel/d-prime'],
        what,
        source: SOURCE,
        status,
        expected: value,
        got: () => of() ?? NaN,
        tolerance,
        why: 'root of a function known to double precision',
      })
    check('share right', expected.proportion_correct, () => got().correctShare)
    check('d′', expected.d_prime, () => got().dPrime)
    check('d′ lower', expected.d_prime_ci_lower, () => got().dPrimeLow)
    check('d′ upper', expected.d_prime_ci_upper, () => got().dPrimeHigh)
    check('share right, lower', expected.pc_ci_lower, () => got().correctLowShare)
    check('share right, upper', expected.pc_ci_upper, () => got().correctHighShare)
    if (expected.d_prime_se === undefined) {
      test('no standard error at chance', () => {
        expect(got()).toMatchObject({ standardError: null, warnings: ['at-or-below-chance'] })
      })
    } else {
      check('standard error', expected.d_prime_se, () => got().standardError, one.tolerance.fields.d_prime_se)
    }
    // the same limits, carried to the share who can tell: (pc − c) / (1 − c)
    const chance = inputs.test === 'triangle' ? 1 / 3 : 1 / 2
    publishedCheck({
      of: ['panel/discriminators'],
      what: 'share who can tell, upper limit',
      source: SOURCE,
      status,
      expected: (expected.pc_ci_upper - chance) / (1 - chance),
      got: () => discriminators({ ...asked, tailShare: (1 - asked.confidence) / 2, method: 'exact' }).highShare,
      tolerance: one.tolerance.rel,
      why: 'root of a function known to double precision',
    })
  })
}
