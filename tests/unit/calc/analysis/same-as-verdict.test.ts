import { expect, test } from 'vitest'
import { sameAsVerdict } from '@/lib/calc/analysis/same-as-verdict'

test.each([
  [-4, 0, 4, 'same'],
  [1, 2, 4, 'same'],
  [-4, 0.5, 5, 'undecided'],
  [-9, 0, 9, 'undecided'],
  [5, 7, 9, 'different'],
  [-9, -7, -5, 'different'],
] as const)('interval %d, %d, %d with a margin of 5: %s', (low, estimate, high, verdict) => {
  expect(sameAsVerdict({ low, estimate, high, margin: 5 })).toBe(verdict)
})
