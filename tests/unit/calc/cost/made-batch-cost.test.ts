import fc from 'fast-check'
import { expect, test } from 'vitest'
import { Decimal } from '@/lib/calc/cost/decimal'
import { madeBatchCost } from '@/lib/calc/cost/made-batch-cost'

const q = {
  ingredientsMinor: new Decimal(3120),
  workMin: 40,
  wagePerHourMinor: new Decimal(2100),
  energyKwh: 9,
  pricePerKwhMinor: new Decimal(32),
}
const texts = (of: typeof q) => Object.values(madeBatchCost(of)).map(String)

test('work and energy are added to the ingredients', () => expect(texts(q)).toEqual(['1400', '288', '4808']))

test('without work and energy a batch costs its ingredients', () =>
  expect(texts({ ...q, workMin: 0, energyKwh: 0 })).toEqual(['0', '0', '3120']))

test('twice of everything costs twice', () => {
  fc.assert(
    fc.property(fc.nat(1e6), fc.nat(600), fc.nat(500), (ingredients, workMin, energyKwh) => {
      const once = madeBatchCost({ ...q, ingredientsMinor: new Decimal(ingredients), workMin, energyKwh })
      const twice = madeBatchCost({
        ...q,
        ingredientsMinor: new Decimal(2 * ingredients),
        workMin: 2 * workMin,
        energyKwh: 2 * energyKwh,
      })
      expect(twice.totalMinor.minus(once.totalMinor.times(2)).abs().lessThan(1e-9)).toBe(true)
    }),
  )
})

test.each([
  ['ingredientsMinor', { ingredientsMinor: new Decimal(-1) }],
  ['workMin', { workMin: -1 }],
  ['wagePerHourMinor', { wagePerHourMinor: new Decimal(Infinity) }],
  ['energyKwh', { energyKwh: Number.NaN }],
  ['pricePerKwhMinor', { pricePerKwhMinor: new Decimal(-0.1) }],
])('%s is refused by its name when it makes no sense', (field, wrong) => {
  expect(() => madeBatchCost({ ...q, ...wrong })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field }) }),
  )
})
