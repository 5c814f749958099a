import { describe } from 'vitest'
import { anovaSize } from '@/lib/calc/plan/anova-size'
import { twoArmsSize } from '@/lib/calc/plan/two-arms-size'
import { publishedCheck } from '@/tests/support/published-check'

// Cohen (1992), "A power primer", Psychological Bulletin 112, table 2: n per group for a power of 0.80 at α = 0.05.
const SOURCE = 'Cohen (1992), A power primer, Psychological Bulletin 112, table 2'
const WHY = 'the table is rounded, and interpolated in the degrees of freedom: it may be one off'

describe('difference of two means, n per group', () => {
  for (const [effect, printed] of [
    [0.2, 393],
    [0.5, 64],
    [0.8, 26],
  ] as const) {
    publishedCheck({
      of: ['plan/two-arms-size'],
      what: `d = ${effect}`,
      source: SOURCE,
      status: 'from memory',
      expected: printed,
      got: () => twoArmsSize({ power: 0.8, difference: effect, sd: 1, alpha: 0.05, alternative: 'two-sided' }).count,
      tolerance: { absolute: 1 },
      why: WHY,
    })
  }
})

describe('analysis of variance, n per group', () => {
  const medium = [64, 52, 45, 39, 35, 32]
  const large = [26, 21, 18, 16, 14, 13]
  for (const [effect, row] of [
    [0.25, medium],
    [0.4, large],
  ] as const) {
    row.forEach((printed, i) => {
      const arms = i + 2
      // one mean off the rest, so far that the spread of the means is the effect
      const off = (effect * arms) / Math.sqrt(arms - 1)
      const means = Array.from({ length: arms }, (_, j) => (j === 0 ? off : 0))
      publishedCheck({
        of: ['plan/anova-size'],
        what: `f = ${effect}, ${arms} groups`,
        source: SOURCE,
        status: 'from memory',
        expected: printed,
        got: () => anovaSize({ power: 0.8, means, sd: 1, alpha: 0.05 }).count,
        tolerance: { absolute: 1 },
        why: WHY,
      })
    })
  }
})
