import fc from 'fast-check'
import { expect, test } from 'vitest'
import { loafLosses } from '@/lib/calc/loaf/loaf-losses'
import { forLong } from '@/tests/support/long'

test('bake and cooling loss add up to the total on dough', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 100, max: 5000, noNaN: true }),
      fc.double({ min: 0.5, max: 1, noNaN: true }),
      fc.double({ min: 0.5, max: 1, noNaN: true }),
      (doughMassG, hot, cooled) => {
        const result = loafLosses({ doughMassG, hotMassG: doughMassG * hot, cooledMassG: doughMassG * hot * cooled })
        expect(result.bakeLossShare + result.coolingLossShare).toBeCloseTo(result.totalLossShare, 12)
        expect(result.totalOnBreadShare).toBeGreaterThanOrEqual(result.totalLossShare)
      },
    ),
    { seed: 1751, numRuns: forLong(200, 4_000) },
  )
})
test('a loaf heavier than its dough is refused', () =>
  expect(() => loafLosses({ doughMassG: 500, hotMassG: 510, cooledMassG: 500 })).toThrow(
    expect.objectContaining({ code: 'out-of-range', facts: expect.objectContaining({ field: 'hotMassG', max: 500 }) }),
  ))
