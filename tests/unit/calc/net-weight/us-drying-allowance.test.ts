import { expect, test } from 'vitest'
import { usDryingAllowanceG } from '@/lib/calc/net-weight/us-drying-allowance'

test('bread is allowed nothing, flour by its weight', () => {
  expect(usDryingAllowanceG({ labelledG: 454, product: 'bread' })).toBe(0)
  expect(usDryingAllowanceG({ labelledG: 2000, product: 'flour' })).toBeCloseTo(
    2 * usDryingAllowanceG({ labelledG: 1000, product: 'flour' }),
    12,
  )
})

test.each([0, -1, Number.POSITIVE_INFINITY])('a label of %d g is refused', (labelledG) =>
  expect(() => usDryingAllowanceG({ labelledG, product: 'flour' })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'labelledG' }) }),
  ),
)
