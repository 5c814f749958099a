import { expect, test } from 'vitest'
import { replacementMassG } from '@/lib/calc/arms/replacement-mass'

test('fat for fat: butter by oil', () => expect(replacementMassG({ removedG: 100, ofPct: 82, byPct: 100 })).toBe(82))
test('gram for gram where both are wholly that', () =>
  expect(replacementMassG({ removedG: 37.5, ofPct: 100, byPct: 100 })).toBe(37.5))
test('there and back again is what it was', () =>
  expect(
    replacementMassG({ removedG: replacementMassG({ removedG: 250, ofPct: 12.5, byPct: 88 }), ofPct: 88, byPct: 12.5 }),
  ).toBeCloseTo(250, 10))
test.each([
  ['removedG', { removedG: -1, ofPct: 82, byPct: 100 }],
  ['ofPct', { removedG: 100, ofPct: 0, byPct: 100 }],
  ['byPct', { removedG: 100, ofPct: 82, byPct: 0 }],
  ['byPct', { removedG: 100, ofPct: 82, byPct: 101 }],
] as const)('an impossible %s is refused at its field', (field, q) =>
  expect(() => replacementMassG(q)).toThrow(
    expect.objectContaining({ code: 'out-of-range', facts: expect.objectContaining({ field }) }),
  ),
)
