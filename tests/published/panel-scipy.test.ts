import { describe } from 'vitest'
import type { CalcId } from '@/lib/calc/catalogue'
import { liking } from '@/lib/calc/panel/liking'
import { tastersForSimilarity } from '@/lib/calc/panel/tasters-for-similarity'
import { tastersNeeded } from '@/lib/calc/panel/tasters-needed'
import type { KnownAnswerTest } from '@/lib/calc/panel/types'
import { scoresOf } from '@/tests/support/panel-scores'
import { publishedCheck } from '@/tests/support/published-check'
import reference from './data/panel-scipy.json'

const check = (of: CalcId, what: string, expected: number, got: () => number, tolerance: number, why: string) =>
  publishedCheck({
    of: [of],
    what,
    source: 'SciPy, script beside the data; scores invented',
    status: `computed with ${reference.computedWith}`,
    expected,
    got,
    tolerance,
    why,
  })

for (const [name, { rows, df, means, comparisons }] of Object.entries(reference.liking)) {
  describe(`liking, ${name} samples`, () => {
    const got = () => liking({ scores: scoresOf(rows), control: 'A', confidence: 0.95 })
    check('panel/liking', 'degrees of freedom', df, () => got().df, 0, 'a count')
    const last = means.length - 1
    for (const key of ['low', 'high'] as const) {
      check(
        'panel/liking',
        `${key} of the last sample`,
        means[last]![key],
        () => got().means[last]![key]!,
        1e-12,
        'double precision',
      )
    }
    comparisons.forEach((one, i) => {
      for (const key of ['estimate', 't', 'pAdjusted', 'low', 'high'] as const) {
        check(
          'panel/liking',
          `${key}, comparison ${i + 1}`,
          one[key],
          () => got().comparisons[i]![key],
          1e-7,
          'nested integrals in SciPy',
        )
      }
    })
  })
}

for (const { tasters, powerReached, steadyTasters, test, ...asked } of reference.similarity) {
  describe(`tasters for similarity, ${test}`, () => {
    const got = () => tastersForSimilarity({ ...asked, test: test as KnownAnswerTest })
    check('panel/tasters-for-similarity', 'fewest', tasters, () => got().tasters, 0, 'a count')
    check(
      'panel/tasters-for-similarity',
      'from which on it stays',
      steadyTasters,
      () => got().steadyTasters,
      0,
      'a count',
    )
    check(
      'panel/tasters-for-similarity',
      'power reached',
      powerReached,
      () => got().powerReached,
      1e-11,
      'double precision',
    )
  })
}

for (const { tasters, powerReached, steadyTasters, test, discriminatorShare, ...asked } of reference.difference) {
  describe(`tasters needed, ${test}`, () => {
    const effect = { effectKind: 'discriminator-share', effect: discriminatorShare } as const
    const got = () => tastersNeeded({ ...asked, ...effect, test: test as KnownAnswerTest })
    check('panel/tasters-needed', 'fewest', tasters, () => got().tasters, 0, 'a count')
    check('panel/tasters-needed', 'from which on it stays', steadyTasters, () => got().steadyTasters, 0, 'a count')
    check('panel/tasters-needed', 'power reached', powerReached, () => got().powerReached, 1e-11, 'double precision')
  })
}
