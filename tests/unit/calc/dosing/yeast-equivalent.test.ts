import { expect, test } from 'vitest'
import { yeastEquivalentG } from '@/lib/calc/dosing/yeast-equivalent'

test.each(['hamelman', 'gisslen'] as const)('there and back is the same mass, by %s', (convention) => {
  for (const to of ['fresh', 'active-dry', 'instant'] as const) {
    const there = yeastEquivalentG({ massG: 30, from: 'fresh', to, convention })
    expect(yeastEquivalentG({ massG: there, from: to, to: 'fresh', convention })).toBeCloseTo(30, 12)
  }
})

test('a convention that says nothing of fresh yeast is not stretched to it', () => {
  expect(() => yeastEquivalentG({ massG: 30, from: 'fresh', to: 'instant', convention: 'three-quarters' })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'from', reason: 'not-in-convention' }) }),
  )
  expect(() => yeastEquivalentG({ massG: 30, from: 'instant', to: 'fresh', convention: 'three-quarters' })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'to' }) }),
  )
})
