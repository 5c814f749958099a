import { expect, test } from 'vitest'
import { normalTail } from '@/lib/calc/distributions/normal-tail'

test('the two tails add up to one and mirror each other', () => {
  for (let z = -9; z <= 9; z += 0.37) {
    const [lower, upper] = [normalTail({ z, tail: 'lower' }), normalTail({ z, tail: 'upper' })]
    expect(lower + upper).toBeCloseTo(1, 14)
    expect(normalTail({ z: -z, tail: 'upper' })).toBe(lower)
  }
})

test('the regions join without a step', () => {
  for (const edge of [0.66291, Math.sqrt(32)]) {
    const [left, right] = [
      normalTail({ z: edge - 1e-13, tail: 'upper' }),
      normalTail({ z: edge + 1e-13, tail: 'upper' }),
    ]
    expect(right / left).toBeCloseTo(1, 11)
    expect(right).toBeLessThanOrEqual(left)
  }
})

test('beyond the smallest double it is 0, and no number is refused', () => {
  expect(normalTail({ z: 40, tail: 'upper' })).toBe(0)
  expect(() => normalTail({ z: NaN, tail: 'upper' })).toThrow('not-finite')
})
