import { expect, test } from 'vitest'
import { mustBeHydration } from '@/lib/calc/preferment/must-be-hydration'

test('a hydration of dough or batter is handed on, one below nought or of a slip is refused at its field', () => {
  expect(mustBeHydration('waterPct', 125)).toBe(125)
  expect(() => mustBeHydration('waterPct', -1)).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'waterPct' }) }),
  )
  expect(() => mustBeHydration('waterPct', 6800)).toThrow(expect.objectContaining({ code: 'out-of-range' }))
})
