import fc from 'fast-check'
import { expect, test } from 'vitest'
import { discriminationP } from '@/lib/calc/panel/discrimination-p'
import { leastCorrect } from '@/lib/calc/panel/least-correct'

const kind = fc.constantFrom('triangle', 'duo-trio', 'paired', 'three-afc', 'paired-two-sided')

test('that many are significant and one fewer are not', () => {
  fc.assert(
    fc.property(
      kind,
      fc.integer({ min: 1, max: 400 }),
      fc.double({ min: 1e-4, max: 0.3, noNaN: true }),
      (test, tasters, alpha) => {
        const { correct, actualAlpha } = leastCorrect({ test, tasters, alpha })
        const p = (count: number) => discriminationP({ test, tasters, correct: count })
        if (correct === null) {
          expect(p(tasters)).toBeGreaterThan(alpha)
          return
        }
        expect(actualAlpha).toBe(p(correct))
        expect(p(correct)).toBeLessThanOrEqual(alpha * (1 + 1e-10))
        if (correct > 0) expect(p(correct - 1)).toBeGreaterThan(alpha)
      },
    ),
  )
})

test('a chance that is just the level is enough: five of five at 1/32', () => {
  expect(leastCorrect({ test: 'paired', tasters: 5, alpha: 1 / 32 }).correct).toBe(5)
  expect(leastCorrect({ test: 'paired-two-sided', tasters: 5, alpha: 1 / 16 }).correct).toBe(5)
})

test('too few tasters can show nothing', () => {
  expect(leastCorrect({ test: 'triangle', tasters: 2, alpha: 0.05 })).toEqual({ correct: null, actualAlpha: null })
})

test('the largest panel is answered, bad levels are refused', () => {
  expect(leastCorrect({ test: 'duo-trio', tasters: 10_000, alpha: 0.05 }).correct).toBe(5083)
  for (const alpha of [0, -0.05, 0.6, 5, NaN])
    expect(() => leastCorrect({ test: 'triangle', tasters: 12, alpha })).toThrow('alpha')
})
