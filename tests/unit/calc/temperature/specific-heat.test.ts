import { expect, test } from 'vitest'
import { specificHeatJPerGK } from '@/lib/calc/temperature/specific-heat'
import { USDA_SR28 as F } from '@/tests/published/data/usda-sr28'

const water = { ...F.ndb14411, waterPct: 100, ashPct: 0 }

test('pure water', () =>
  expect(specificHeatJPerGK({ composition: water, tempC: 20 })).toBeCloseTo(
    4.1762 - 9.0864e-5 * 20 + 5.4731e-6 * 400,
    12,
  ))
test('a mixture lies between its parts', () => {
  const flour = specificHeatJPerGK({ composition: F.ndb20129, tempC: 25 })
  expect(flour).toBeGreaterThan(1.5)
  expect(flour).toBeLessThan(2.2)
})
test('a row that does not close is taken by its own sum', () => {
  const half = { ...water, waterPct: 50 }
  expect(specificHeatJPerGK({ composition: half, tempC: 20 })).toBeCloseTo(
    specificHeatJPerGK({ composition: water, tempC: 20 }),
    12,
  )
})
test('fibre is part of carbohydrate by difference and not counted twice', () => {
  const bran = { ...water, waterPct: 0, carbohydratePct: 100, fibrePct: 100 }
  expect(specificHeatJPerGK({ composition: bran, tempC: 0 })).toBeCloseTo(1.8459, 12)
  expect(specificHeatJPerGK({ composition: { ...bran, fibrePct: null }, tempC: 0 })).toBeCloseTo(1.5488, 12)
})
test('what is not stated, frozen or empty is refused', () => {
  expect(() => specificHeatJPerGK({ composition: { ...water, fatPct: null }, tempC: 20 })).toThrow(
    expect.objectContaining({
      code: 'not-possible',
      facts: expect.objectContaining({ field: 'composition.fatPct', reason: 'not-stated' }),
    }),
  )
  expect(() => specificHeatJPerGK({ composition: water, tempC: -5 })).toThrow(
    expect.objectContaining({ code: 'out-of-range' }),
  )
  expect(() => specificHeatJPerGK({ composition: { ...water, waterPct: 0 }, tempC: 5 })).toThrow(
    expect.objectContaining({ code: 'out-of-range' }),
  )
})
