import { expect, test } from 'vitest'
import { yeastEquivalentG } from '@/lib/calc/dosing/yeast-equivalent'

test('there and back is the same mass', () => {
  for (const to of ['fresh', 'active-dry', 'instant'] as const)
    expect(yeastEquivalentG({ massG: yeastEquivalentG({ massG: 30, from: 'fresh', to }), from: to, to: 'fresh' })).toBeCloseTo(
      30,
      12,
    )
})
