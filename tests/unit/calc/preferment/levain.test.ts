import fc from 'fast-check'
import { expect, test } from 'vitest'
import { levain } from '@/lib/calc/preferment/levain'

const pct = (min: number, max: number) => fc.double({ min, max, noNaN: true })

test('it weighs what was wanted, at the hydration wanted, whatever the starter', () =>
  fc.assert(
    fc.property(
      pct(80, 130),
      pct(50, 125),
      pct(1, 40),
      fc.constantFrom('fresh-flour' as const, 'mix' as const),
      (wet, starterWet, starterPct, starterBy) => {
        const found = levain({
          levainMassG: 500,
          levainHydrationPct: wet,
          starterHydrationPct: starterWet,
          starterBy,
          starterPct,
        })
        expect(found.starterG + found.freshFlourG + found.freshWaterG).toBeCloseTo(500, 8)
        expect((100 * found.waterInAllG) / found.flourInAllG).toBeCloseTo(wet, 8)
        expect(starterBy === 'mix' ? found.starterInMixPct : found.starterOnFreshFlourPct).toBeCloseTo(starterPct, 8)
        expect(found.freshWaterG + (found.starterG * starterWet) / (100 + starterWet)).toBeCloseTo(found.waterInAllG, 8)
      },
    ),
  ))

test('the same percentage in the two meanings is not the same starter', () => {
  const q = { levainMassG: 500, levainHydrationPct: 100, starterHydrationPct: 100, starterPct: 20 }
  expect(levain({ ...q, starterBy: 'mix' }).starterG).toBeCloseTo(100, 10)
  expect(levain({ ...q, starterBy: 'fresh-flour' }).starterG).toBeCloseTo(500 / 11, 10)
})

test.each([
  ['starter-too-wet', { levainHydrationPct: 50, starterHydrationPct: 125, starterPct: 80 }],
  ['starter-too-dry', { levainHydrationPct: 125, starterHydrationPct: 50, starterPct: 70 }],
])('%s is refused at the starter', (reason, q) => {
  expect(() => levain({ levainMassG: 500, starterBy: 'mix', ...q })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'starterPct', reason }) }),
  )
})
