import fc from 'fast-check'
import { expect, test } from 'vitest'
import { discriminators } from '@/lib/calc/panel/discriminators'

const counts = fc
  .integer({ min: 1, max: 500 })
  .chain((tasters) => fc.record({ tasters: fc.constant(tasters), correct: fc.integer({ min: 0, max: tasters }) }))

test('the share lies between its limits, by either method', () => {
  fc.assert(
    fc.property(
      counts,
      fc.constantFrom('triangle', 'duo-trio', 'paired', 'three-afc'),
      fc.constantFrom('exact', 'normal'),
      (asked, test, method) => {
        const { lowShare, discriminatorShare, highShare } = discriminators({ ...asked, test, method, tailShare: 0.05 })
        expect(lowShare).toBeLessThanOrEqual(discriminatorShare + 1e-12)
        expect(highShare).toBeGreaterThanOrEqual(discriminatorShare - 1e-12)
      },
    ),
  )
})

test('chance is none who can tell, all right is all', () => {
  const asked = { test: 'triangle', tasters: 30, tailShare: 0.05, method: 'exact' } as const
  expect(discriminators({ ...asked, correct: 10 })).toMatchObject({
    discriminatorShare: expect.closeTo(0, 14),
    warnings: [],
  })
  expect(discriminators({ ...asked, correct: 30 })).toMatchObject({
    discriminatorShare: expect.closeTo(1, 14),
    highShare: expect.closeTo(1, 14),
  })
})

test('below chance the share is negative and a warning says so; few tasters are named too', () => {
  const found = discriminators({ test: 'duo-trio', tasters: 20, correct: 6, tailShare: 0.05, method: 'normal' })
  expect(found.discriminatorShare).toBeCloseTo(-0.4, 12)
  expect(found.warnings).toEqual(['below-chance', 'few-tasters'])
})

test('the two methods come together as tasters grow', () => {
  const at = (method: 'exact' | 'normal') =>
    discriminators({ test: 'triangle', tasters: 10_000, correct: 5000, tailShare: 0.05, method }).highShare
  expect(Math.abs(at('exact') - at('normal'))).toBeLessThan(1e-3)
})

test('bad input is refused', () => {
  const asked = { test: 'triangle', tasters: 30, correct: 12, tailShare: 0.05, method: 'normal' } as const
  expect(() => discriminators({ ...asked, tailShare: 0 })).toThrow('tailShare')
  expect(() => discriminators({ ...asked, correct: 31 })).toThrow('correct')
  expect(() => discriminators({ ...asked, tasters: NaN })).toThrow('not-finite')
})
