import fc from 'fast-check'
import { expect, test } from 'vitest'
import { preFerment } from '@/lib/calc/preferment/pre-ferment'

const pct = (min: number, max: number) => fc.double({ min, max, noNaN: true })

test('flour and water of pre-ferment and dough together are those of the formula', () =>
  fc.assert(
    fc.property(pct(50, 90), pct(1, 50), pct(40, 100), (doughHydrationPct, preFermentedPct, preFermentHydrationPct) => {
      const q = { flourMassG: 3000, doughHydrationPct, preFermentedPct, preFermentHydrationPct }
      const found = preFerment(q)
      expect(found.preFermentFlourG + found.doughFlourG).toBeCloseTo(3000, 8)
      expect(found.preFermentWaterG + found.doughWaterG).toBeCloseTo(30 * doughHydrationPct, 8)
    }),
  ))

test('a pre-ferment that would take more water than the dough has is refused', () => {
  expect(() =>
    preFerment({ flourMassG: 1000, doughHydrationPct: 60, preFermentedPct: 80, preFermentHydrationPct: 100 }),
  ).toThrow(
    expect.objectContaining({
      facts: expect.objectContaining({ field: 'preFermentHydrationPct', reason: 'not-enough-water' }),
    }),
  )
})

test('all the flour and all the water may be in it', () => {
  expect(
    preFerment({ flourMassG: 700, doughHydrationPct: 66.1, preFermentedPct: 100, preFermentHydrationPct: 66.1 }),
  ).toMatchObject({ doughFlourG: 0, doughWaterG: 0 })
})
