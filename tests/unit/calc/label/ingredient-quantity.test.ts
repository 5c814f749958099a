import { expect, test } from 'vitest'
import { ingredientQuantity } from '@/lib/calc/label/ingredient-quantity'

test('it is on the finished mass, and above all of it said as grams', () => {
  expect(ingredientQuantity({ ingoingMassG: 100, finishedMassG: 100 })).toEqual({ quantityPct: 100, sayAs: 'percent' })
  expect(ingredientQuantity({ ingoingMassG: 120, finishedMassG: 100 })).toEqual({
    quantityPct: 120,
    sayAs: 'g-per-100-g',
  })
  expect(ingredientQuantity({ ingoingMassG: 0, finishedMassG: 100 })).toEqual({ quantityPct: 0, sayAs: 'percent' })
})

test('no bread, less than nothing and no number are refused by their field', () => {
  for (const [change, field] of [
    [{ finishedMassG: 0 }, 'finishedMassG'],
    [{ ingoingMassG: -1 }, 'ingoingMassG'],
    [{ ingoingMassG: Number.NaN }, 'ingoingMassG'],
    [{ ingoingMassG: 1e300, finishedMassG: 1e-300 }, 'ingoingMassG'],
  ] as const) {
    expect(() => ingredientQuantity({ ingoingMassG: 10, finishedMassG: 100, ...change })).toThrow(
      expect.objectContaining({ facts: expect.objectContaining({ field }) }),
    )
  }
})
