import { expect, test } from 'vitest'
import { mustBeSameActivity } from '@/lib/calc/dosing/must-be-same-activity'

test('method and unit must both agree', () => {
  const a = { method: 'm', unit: 'u' }
  expect(() => mustBeSameActivity('x', a, { ...a })).not.toThrow()
  for (const b of [
    { ...a, method: 'n' },
    { ...a, unit: 'v' },
  ])
    expect(() => mustBeSameActivity('x', a, b)).toThrow(
      expect.objectContaining({ facts: expect.objectContaining({ reason: 'dose-by-effect' }) }),
    )
})
