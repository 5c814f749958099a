import { expect, test } from 'vitest'
import { rateAtTemperature } from '@/lib/calc/staling/rate-at-temperature'

test('colder is faster, and there and back is the same rate', () => {
  const cold = rateAtTemperature({ ratePerDay: 0.3, tempC: 22, otherTempC: 6, timesPer10Colder: 2 })
  expect(cold).toBeGreaterThan(0.3)
  expect(rateAtTemperature({ ratePerDay: cold, tempC: 6, otherTempC: 22, timesPer10Colder: 2 })).toBeCloseTo(0.3, 12)
})

test('a freezer and a warm cabinet are refused: the rule does not hold there', () => {
  for (const otherTempC of [-18, 40])
    expect(() => rateAtTemperature({ ratePerDay: 0.3, tempC: 22, otherTempC, timesPer10Colder: 2 })).toThrow(
      expect.objectContaining({ facts: expect.objectContaining({ field: 'otherTempC' }) }),
    )
})
