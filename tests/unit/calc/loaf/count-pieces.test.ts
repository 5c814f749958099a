import fc from 'fast-check'
import { expect, test } from 'vitest'
import { countPieces } from '@/lib/calc/loaf/count-pieces'

const count = fc.integer({ min: 0, max: 50 })

test('every piece that was scaled is spoilt, sampled, sold or wasted, once', () =>
  fc.assert(
    fc.property(count, count, count, count, (spoilt, sampled, sold, rest) => {
      const scaled = spoilt + sampled + sold + rest + 1
      const found = countPieces({ planned: 100, scaled, spoilt, sampled, sold })
      expect(spoilt + sampled + sold + found.wasted).toBe(scaled)
    }),
  ))

test('more sold than good, more spoilt than scaled, and half a loaf are refused at their field', () => {
  const q = { planned: 100, scaled: 98, spoilt: 3, sampled: 2, sold: 90 }
  for (const [field, value] of [
    ['sold', 94],
    ['spoilt', 99],
    ['sampled', 96],
    ['scaled', 97.5],
    ['planned', 0],
  ] as const)
    expect(() => countPieces({ ...q, [field]: value })).toThrow(
      expect.objectContaining({ facts: expect.objectContaining({ field }) }),
    )
})

test('a batch that all spoilt has no percentages of good pieces', () => {
  expect(countPieces({ planned: 10, scaled: 12, spoilt: 12, sampled: 0, sold: 0 })).toEqual({
    notScaled: 0,
    good: 0,
    goodPct: 0,
    wasted: 0,
    soldPct: 0,
    wastedPct: 0,
  })
})
