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

test('the margin below the control may be of another size than the one above', () => {
  const at = (low: number, high: number) => sameAsVerdict({ low, estimate: (low + high) / 2, high, margin: 5, less: 3 })
  expect([at(-2, 4), at(-3, 4), at(-9, -3), at(-9, -2), at(4, 6)]).toEqual([
    'same',
    'undecided',
    'different',
    'undecided',
    'undecided',
  ])
  expect(() => sameAsVerdict({ low: 0, estimate: 1, high: 2, margin: 5, less: 0 })).toThrow('less')
})
