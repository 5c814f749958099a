import fc from 'fast-check'
import { expect, test } from 'vitest'
import { productMassG } from '@/lib/calc/dosing/product-mass'
import { forLong } from '@/tests/support/long'

test('half active at four fifths of its strength takes two and a half times the mass', () =>
  expect(productMassG({ activeMassG: 2, activeShare: 0.5, strengthShare: 0.8 })).toBeCloseTo(5, 12))

test('the product holds the active asked for, and a weaker lot takes more', () => {
  const share = fc.double({ min: 0.001, max: 1, noNaN: true })
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 1e4, noNaN: true }),
      share,
      share,
      (activeMassG, activeShare, strengthShare) => {
        const massG = productMassG({ activeMassG, activeShare, strengthShare })
        expect(massG * activeShare * strengthShare).toBeCloseTo(activeMassG, 6)
        expect(massG).toBeGreaterThanOrEqual(productMassG({ activeMassG, activeShare, strengthShare: 1 }))
      },
    ),
    { seed: 1720, numRuns: forLong(200, 4_000) },
  )
})

test('a product without active substance is refused', () =>
  expect(() => productMassG({ activeMassG: 1, activeShare: 0, strengthShare: 1 })).toThrow(
    expect.objectContaining({ code: 'out-of-range', facts: expect.objectContaining({ field: 'activeShare' }) }),
  ))
