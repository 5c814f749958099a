import fc from 'fast-check'
import { expect, test } from 'vitest'
import { eggsPerPound } from '@/lib/calc/label/eggs-per-pound'

test('what is declared is whole fifths, never above what is there, and less than a fifth below it', () =>
  fc.assert(
    fc.property(fc.double({ min: 2.56, max: 100, noNaN: true }), (eggSolidsPct) => {
      const { eggsInLb, declaredEggs } = eggsPerPound({ eggSolidsPct })
      expect(declaredEggs * 5).toBeCloseTo(Math.round(declaredEggs * 5), 9)
      expect(declaredEggs).toBeLessThanOrEqual(eggsInLb * (1 + 1e-11))
      expect(eggsInLb - declaredEggs).toBeLessThan(0.2)
    }),
  ))

test('just so many fifths are declared whole, however the figure is held', () => {
  for (let fifths = 5; fifths <= 60; fifths++)
    expect(eggsPerPound({ eggSolidsPct: ((fifths / 5) * 0.41 * 100) / 16 }).declaredEggs).toBeCloseTo(fifths / 5, 12)
})

test('below the least share no egg is declared', () =>
  expect(() => eggsPerPound({ eggSolidsPct: 2.559 })).toThrow(
    expect.objectContaining({
      code: 'not-possible',
      facts: expect.objectContaining({ field: 'eggSolidsPct', min: 2.56, reason: 'too-little-egg' }),
    }),
  ))

test.each([-1, 101, Number.NaN])('%d %% is no share', (eggSolidsPct) =>
  expect(() => eggsPerPound({ eggSolidsPct })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'eggSolidsPct' }) }),
  ),
)

test('the allergen is spoken of', () =>
  expect(eggsPerPound({ eggSolidsPct: 3 }).cautions).toContain('egg-is-an-allergen'))
