import fc from 'fast-check'
import { expect, test } from 'vitest'
import { energy } from '@/lib/calc/label/energy'

const none = {
  fatG: 0,
  carbohydrateG: 0,
  polyolsG: 0,
  fibreG: 0,
  proteinG: 0,
  alcoholG: 0,
  organicAcidsG: 0,
  salatrimsG: 0,
  erythritolG: 0,
}
const mass = fc.double({ min: 0, max: 100, noNaN: true })

test('it adds up: two foods together have the energy of both', () =>
  fc.assert(
    fc.property(fc.record({ fatG: mass, carbohydrateG: mass, fibreG: mass, proteinG: mass }), mass, (food, fatG) => {
      const both = energy({ ...none, ...food, fatG: food.fatG + fatG })
      const [one, other] = [energy({ ...none, ...food }), energy({ ...none, fatG })]
      expect(both.energyKj).toBeCloseTo(one.energyKj + other.energyKj, 8)
      expect(both.energyKcal).toBeCloseTo(one.energyKcal + other.energyKcal, 8)
    }),
  ))

test('nothing has none; less than nothing and no number are refused', () => {
  expect(energy(none)).toEqual({ energyKj: 0, energyKcal: 0 })
  expect(() => energy({ ...none, fibreG: -1 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'fibreG' }) }),
  )
  expect(() => energy({ ...none, proteinG: Number.NaN })).toThrow(expect.objectContaining({ code: 'not-finite' }))
})
