import { frozenMargin } from '@/lib/calc/analysis/frozen-margin'
import { sameAsVerdict } from '@/lib/calc/analysis/same-as-verdict'
import { publishedCheck } from '@/tests/support/published-check'

const source =
  'US FDA, Statistical Approaches to Establishing Bioequivalence, 2001: a 90 % interval of the ratio within 80 to 125 %, symmetrical in logarithms'
const status = 'from memory'

for (const [pct, goodDirection] of [
  [25, 'larger'],
  [20, 'smaller'],
] as const) {
  publishedCheck({
    of: ['analysis/frozen-margin'],
    what: `margin of ${pct} %, ${goodDirection}: ln 1.25 = −ln 0.8`,
    source,
    status,
    expected: 0.22314,
    got: () => frozenMargin({ kind: 'pct-on-log-scale', pct, goodDirection }),
    tolerance: { absolute: 5e-6 },
    why: 'half of the fifth decimal',
  })
}
for (const [low, high, expected] of [
  [0.85, 1.1, 'same'],
  [0.801, 1.249, 'same'],
  [0.75, 0.95, 'undecided'],
  [0.79, 1.3, 'undecided'],
  [1.3, 1.5, 'different'],
  [0.6, 0.78, 'different'],
] as const) {
  publishedCheck({
    of: ['analysis/same-as-verdict'],
    what: `interval of the ratio from ${low} to ${high}`,
    source,
    status: `${status}; intervals made up`,
    expected,
    got: () =>
      sameAsVerdict({
        estimate: Math.log(low * high) / 2,
        low: Math.log(low),
        high: Math.log(high),
        margin: Math.log(1.25),
      }),
  })
}
