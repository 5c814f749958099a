import { expect, test } from 'vitest'
import { binomialTail } from '@/lib/calc/distributions/binomial-tail'

test('both tails hold k, so they add up to one more than its own chance', () => {
  // k = 2 of 4 at one half: 6/16
  const [lower, upper] = [
    binomialTail({ k: 2, n: 4, share: 0.5, tail: 'lower' }),
    binomialTail({ k: 2, n: 4, share: 0.5, tail: 'upper' }),
  ]
  expect(lower + upper - 1).toBeCloseTo(6 / 16, 14)
})

test('the ends are certain or a single power', () => {
  expect(binomialTail({ k: 0, n: 9, share: 0.2, tail: 'upper' })).toBe(1)
  expect(binomialTail({ k: 9, n: 9, share: 0.2, tail: 'lower' })).toBe(1)
  expect(binomialTail({ k: 9, n: 9, share: 0.2, tail: 'upper' }) / 0.2 ** 9).toBeCloseTo(1, 12)
  expect(binomialTail({ k: 0, n: 9, share: 0.2, tail: 'lower' })).toBeCloseTo(0.8 ** 9, 14)
})

test('parts of a count, and more successes than tries, are refused', () => {
  expect(() => binomialTail({ k: 1.5, n: 4, share: 0.5, tail: 'upper' })).toThrow('not-whole')
  expect(() => binomialTail({ k: 5, n: 4, share: 0.5, tail: 'upper' })).toThrow('out-of-range')
})
