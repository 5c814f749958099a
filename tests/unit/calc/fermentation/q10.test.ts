import fc from 'fast-check'
import { expect, test } from 'vitest'
import { q10 } from '@/lib/calc/fermentation/q10'

test('rates taken from a factor give that factor back, in either order', () =>
  fc.assert(
    fc.property(
      fc.double({ min: 0.5, max: 5, noNaN: true }),
      fc.double({ min: 0, max: 30, noNaN: true }),
      fc.double({ min: 0.5, max: 20, noNaN: true }),
      (factor, firstTempC, apartC) => {
        const secondTempC = firstTempC + apartC
        const secondRate = factor ** (apartC / 10)
        expect(q10({ firstRate: 1, firstTempC, secondRate, secondTempC }) / factor).toBeCloseTo(1, 9)
        expect(
          q10({ firstRate: secondRate, firstTempC: secondTempC, secondRate: 1, secondTempC: firstTempC }) / factor,
        ).toBeCloseTo(1, 9)
      },
    ),
  ))

test('one temperature twice, no rate and no number are refused', () => {
  const q = { firstRate: 1, firstTempC: 20, secondRate: 2, secondTempC: 30 }
  expect(() => q10({ ...q, secondTempC: 20 })).toThrow(
    expect.objectContaining({ code: 'not-possible', facts: expect.objectContaining({ reason: 'same-temperature' }) }),
  )
  expect(() => q10({ ...q, firstRate: 0 })).toThrow(expect.objectContaining({ code: 'out-of-range' }))
  expect(() => q10({ ...q, secondRate: Number.POSITIVE_INFINITY })).toThrow(
    expect.objectContaining({ code: 'not-finite' }),
  )
  expect(() => q10({ ...q, firstRate: 1e-300, secondRate: 1e300, secondTempC: 20.1 })).toThrow(
    expect.objectContaining({ code: 'not-finite' }),
  )
})
