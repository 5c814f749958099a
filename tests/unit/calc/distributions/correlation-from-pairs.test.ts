import { expect, test } from 'vitest'
import { correlationFromPairs } from '@/lib/calc/distributions/correlation-from-pairs'

test('pairs go by rows above the diagonal', () => {
  expect(correlationFromPairs([0.1, 0.2, 0.3])).toEqual([
    [1, 0.1, 0.2],
    [0.1, 1, 0.3],
    [0.2, 0.3, 1],
  ])
})

test('none, a number of pairs that no matrix has, and impossible ones are refused', () => {
  expect(() => correlationFromPairs([])).toThrow('empty')
  expect(() => correlationFromPairs([0.5, 0.5])).toThrow('wrong-shape')
  expect(() => correlationFromPairs([0.5, 1.2, 0.5])).toThrow('"pairs[1]"')
  expect(() => correlationFromPairs([NaN])).toThrow('not-finite')
})
