import { expect, test } from 'vitest'
import { splitMix } from '@/lib/calc/random/split-mix'

test('a seed is taken modulo 2^64', () => {
  expect(splitMix(2n ** 64n + 5n)()).toBe(splitMix(5n)())
})
