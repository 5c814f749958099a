import { expect, test } from 'vitest'
import { massToBuy } from '@/lib/calc/cost/mass-to-buy'

test('what is bought yields what is needed', () => {
  const { usableYieldPct, toBuyG } = massToBuy({ preparedFromG: 740, preparedToG: 610, neededG: 3000 })
  expect((toBuyG * usableYieldPct) / 100).toBeCloseTo(3000, 9)
})

test('nothing ready, and more than there was, are refused', () => {
  for (const preparedToG of [0, 741])
    expect(() => massToBuy({ preparedFromG: 740, preparedToG, neededG: 3000 })).toThrow(
      expect.objectContaining({ facts: expect.objectContaining({ field: 'preparedToG' }) }),
    )
})
