import fc from 'fast-check'
import { expect, test } from 'vitest'
import { relativeRateShare } from '@/lib/calc/fermentation/relative-rate'

const yeast = { minimumTempC: 2.8, optimumTempC: 32.3, maximumTempC: 45.4 }

test('it is a share, best at the optimum, and nothing at both ends', () =>
  fc.assert(
    fc.property(fc.double({ min: -20, max: 100, noNaN: true }), (tempC) => {
      const rate = relativeRateShare({ tempC, ...yeast })
      expect(rate).toBeGreaterThanOrEqual(0)
      expect(rate).toBeLessThanOrEqual(1 + 1e-12)
      if (tempC <= 2.8 || tempC >= 45.4) expect(rate).toBe(0)
    }),
  ))

test('it rises up to the optimum and falls after it', () => {
  const at = (tempC: number) => relativeRateShare({ tempC, ...yeast })
  for (let tempC = 3; tempC < 45; tempC += 0.5) {
    if (tempC + 0.5 <= 32.3) expect(at(tempC + 0.5)).toBeGreaterThan(at(tempC))
    if (tempC >= 32.3) expect(at(tempC + 0.5)).toBeLessThan(at(tempC))
  }
  expect(at(32.3)).toBeCloseTo(1, 14)
})

test('temperatures out of order, or an optimum that the model cannot have, are refused', () => {
  expect(() => relativeRateShare({ tempC: 20, ...yeast, optimumTempC: 50 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'maximumTempC' }) }),
  )
  expect(() => relativeRateShare({ tempC: 20, ...yeast, optimumTempC: 20 })).toThrow(
    expect.objectContaining({
      code: 'not-possible',
      facts: expect.objectContaining({ reason: 'optimum-below-middle' }),
    }),
  )
  expect(() => relativeRateShare({ tempC: Number.NaN, ...yeast })).toThrow(
    expect.objectContaining({ code: 'not-finite' }),
  )
})
