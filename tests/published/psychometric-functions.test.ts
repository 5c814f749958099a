import { correctShare } from '@/lib/calc/panel/correct-share'
import type { KnownAnswerTest } from '@/lib/calc/panel/types'
import { publishedCheck } from '@/tests/support/published-check'
import cases from './data/psychometric-functions.json'

const ENNIS = 'D. M. Ennis, Journal of Sensory Studies 8, 1993'

for (const { title, inputs, expected, ...one } of cases) {
  inputs.d_primes.forEach((dPrime, i) => {
    publishedCheck({
      of: ['panel/correct-share'],
      what: `${title}, d′ ${dPrime}`,
      source: `${ENNIS}: Thurstonian model, values computed`,
      status: `computed with ${one.computedWith}; second route: ${one.checkedWith}`,
      expected: expected.proportion_correct[i]!,
      got: () => correctShare({ test: inputs.test as KnownAnswerTest, dPrime }).correctShare,
      tolerance: one.tolerance.rel,
      why: 'double precision, less than what the integrals carry',
    })
  })
}

for (const [test, expected] of [
  ['triangle', 0.418],
  ['duo-trio', 0.582],
] as const) {
  publishedCheck({
    of: ['panel/correct-share'],
    what: `${test} at d′ 1 as printed`,
    source: ENNIS,
    status: 'from memory',
    expected,
    got: () => correctShare({ test, dPrime: 1 }).correctShare,
    tolerance: { absolute: 5e-4 },
    why: 'three decimals',
  })
}
