import { expect, test } from 'vitest'
import { noWorseVerdict } from '@/lib/calc/analysis/no-worse-verdict'

test.each([
  [-3, -1, 1, 'no-worse'],
  [-4, -3, -2, 'no-worse'],
  [-5, -1, 3, 'undecided'],
  [-12, -8, -5, 'worse'],
  [2, 4, 6, 'no-worse'],
] as const)('interval %d, %d, %d with a bearable loss of 5: %s', (low, estimate, high, verdict) => {
  expect(noWorseVerdict({ low, estimate, high, margin: 5, goodDirection: 'larger' })).toBe(verdict)
  expect(noWorseVerdict({ low: -high, estimate: -estimate, high: -low, margin: 5, goodDirection: 'smaller' })).toBe(
    verdict,
  )
})
