import { expect, test } from 'vitest'
import { portionIntake } from '@/lib/calc/label/portion-intake'

test('a portion of 100 g is the figures themselves, and twice the portion twice of all', () => {
  const one = portionIntake({ portionG: 100, energyKj: 1000, saltG: 1.2 })
  const two = portionIntake({ portionG: 200, energyKj: 1000, saltG: 1.2 })
  expect(one.rows.map(({ inPortion }) => inPortion)).toEqual([1000, 1.2])
  two.rows.forEach((row, i) => expect(row.intakePct).toBeCloseTo(2 * one.rows[i]!.intakePct, 12))
})

test('what is not known is left out and never nought', () => {
  expect(portionIntake({ portionG: 50, fatG: 4 }).rows.map(({ nutrient }) => nutrient)).toEqual(['fat'])
})

test('no figure at all, no portion, and more than 100 g in 100 g are refused', () => {
  expect(() => portionIntake({ portionG: 50 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ reason: 'not-given' }) }),
  )
  expect(() => portionIntake({ portionG: 0, fatG: 4 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'portionG' }) }),
  )
  expect(() => portionIntake({ portionG: 50, fatG: 101 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'fatG' }) }),
  )
})
