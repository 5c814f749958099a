import { expect, test } from 'vitest'
import { CalcError } from '@/lib/calc/error'
import { limitOfCalcError } from '@/lib/kitchen/results/limit-of-calc-error'
import { results } from '@/lib/words/en/results'
import { sourceFilesIn, textOf } from '../../../support/source-files'

/** The analyses that the result rests on, and every reason that they give. */
const used =
  /\/(count-arm-days|fit-arm-days|judge-arm-days|judge-log-ratios|ratio-in-blocks|batch-means|adjust-against-control|split-plot)\.ts$/
// the last is the guard's that they share, mustVary
const reasons = [
  ...new Set(
    sourceFilesIn('lib/calc/analysis')
      .filter((file) => used.test(file))
      .flatMap((file) => [...textOf(file).matchAll(/reason: '([a-z-]+)'/g)].map(([, reason]) => reason!))
      .concat('zero-variance'),
  ),
]

/** Reasons that only a fault of ours could bring about; they still get a sentence. */
const ours = [
  'batch-in-two-arms',
  'batch-in-two-blocks',
  'unknown-arm',
  'unknown-name',
  // a day counts when its control was read, and then the comparison is begun
  'no-day-counted',
]

test('there are reasons to look at', () => expect(reasons.length).toBeGreaterThan(6))

test.each(reasons)('%s has a sentence of its own', (reason) => {
  const limit = limitOfCalcError(new CalcError('not-possible', { field: 'rows', reason }))
  expect(Object.keys(results.limits)).toContain(limit)
  expect(limit === 'not-computable').toBe(ours.includes(reason))
})

test('a bug is not turned into a sentence', () => {
  expect(() => limitOfCalcError(new TypeError('x'))).toThrow(TypeError)
})
