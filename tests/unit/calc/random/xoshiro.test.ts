import { expect, test } from 'vitest'
import { xoshiro } from '@/lib/calc/random/xoshiro'

test('numbers are whole and below 2^32, and the state given is not changed', () => {
  const state = [1, 2, 3, 0xffffffff] as const
  const next = xoshiro(state)
  for (let i = 0; i < 1000; i++) {
    const n = next()
    expect(Number.isInteger(n) && n >= 0 && n < 2 ** 32).toBe(true)
  }
  expect(state).toEqual([1, 2, 3, 0xffffffff])
})
