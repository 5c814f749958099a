import fc from 'fast-check'
import { expect, test } from 'vitest'
import { discriminationPower } from '@/lib/calc/panel/discrimination-power'

const kind = fc.constantFrom('triangle', 'duo-trio', 'paired', 'three-afc', 'paired-two-sided')

test('a larger difference is found more often, never less often than a guess is significant', () => {
  const smaller = fc.double({ min: 0.01, max: 3, noNaN: true })
  fc.assert(
    fc.property(kind, fc.integer({ min: 3, max: 150 }), smaller, (test, tasters, effect) => {
      const at = (size: number) =>
        discriminationPower({ test, tasters, alpha: 0.05, effectKind: 'd-prime', effect: size })
      const { power, actualAlpha } = at(effect)
      expect(at(effect + 0.2).power).toBeGreaterThanOrEqual(power)
      expect(power).toBeLessThanOrEqual(1 + 1e-12)
      if (actualAlpha !== null) expect(power).toBeGreaterThanOrEqual(actualAlpha - 1e-12)
    }),
  )
})

test('too few tasters find nothing', () => {
  expect(
    discriminationPower({ test: 'triangle', tasters: 2, alpha: 0.05, effectKind: 'correct-share', effect: 0.99 }),
  ).toEqual({
    leastCorrect: null,
    actualAlpha: null,
    correctShare: 0.99,
    power: 0,
  })
})

test('two-sided, both sides count: five tasters at 0.6 are all on one side in 0.6⁵ + 0.4⁵', () => {
  const { power } = discriminationPower({
    test: 'paired-two-sided',
    tasters: 5,
    alpha: 0.1,
    effectKind: 'correct-share',
    effect: 0.6,
  })
  expect(power).toBeCloseTo(0.6 ** 5 + 0.4 ** 5, 13)
})

test('bad input is refused', () => {
  const asked = { test: 'triangle', tasters: 30, alpha: 0.05, effectKind: 'd-prime', effect: 1 } as const
  expect(() => discriminationPower({ ...asked, tasters: 1e7 })).toThrow('tasters')
  expect(() => discriminationPower({ ...asked, alpha: 5 })).toThrow('alpha')
  expect(() => discriminationPower({ ...asked, effect: 0 })).toThrow('effect')
})
