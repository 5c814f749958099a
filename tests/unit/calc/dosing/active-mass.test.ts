import { expect, test } from 'vitest'
import { activeMassG } from '@/lib/calc/dosing/active-mass'

test('one dose in its three units', () => {
  for (const [dose, unit] of [
    [0.5, 'pct-flour'],
    [5000, 'ppm-flour'],
    [5, 'g-per-kg-flour'],
  ] as const)
    expect(activeMassG({ dose, unit, flourMassG: 2000 })).toBeCloseTo(10, 12)
})
test('a negative dose is refused', () =>
  expect(() => activeMassG({ dose: -1, unit: 'ppm-flour', flourMassG: 1 })).toThrow(
    expect.objectContaining({ code: 'out-of-range' }),
  ))
