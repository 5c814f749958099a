import fc from 'fast-check'
import { expect, test } from 'vitest'
import { discriminationP } from '@/lib/calc/panel/discrimination-p'

const kind = fc.constantFrom('triangle', 'duo-trio', 'paired', 'three-afc', 'paired-two-sided')

test('one more right answer is never likelier by guessing; none right tells nothing', () => {
  fc.assert(
    fc.property(kind, fc.integer({ min: 1, max: 300 }), (test, tasters) => {
      const from = test === 'paired-two-sided' ? Math.ceil(tasters / 2) : 0
      expect(discriminationP({ test, tasters, correct: from })).toBeLessThanOrEqual(1)
      for (let correct = from; correct < tasters; correct++) {
        expect(discriminationP({ test, tasters, correct: correct + 1 })).toBeLessThan(
          discriminationP({ test, tasters, correct }) + 1e-15,
        )
      }
    }),
    { numRuns: 30 },
  )
  expect(discriminationP({ test: 'triangle', tasters: 12, correct: 0 })).toBe(1)
})

test('two-sided, it does not matter for which of the two it is', () => {
  fc.assert(
    fc.property(fc.integer({ min: 1, max: 200 }), fc.nat(), (tasters, draw) => {
      const correct = draw % (tasters + 1)
      const p = (count: number) => discriminationP({ test: 'paired-two-sided', tasters, correct: count })
      expect(p(correct)).toBe(p(tasters - correct))
      expect(p(correct)).toBeLessThanOrEqual(1)
    }),
  )
})

test('all right is a power of chance', () => {
  expect(discriminationP({ test: 'triangle', tasters: 5, correct: 5 })).toBeCloseTo(3 ** -5, 14)
  expect(discriminationP({ test: 'paired-two-sided', tasters: 5, correct: 0 })).toBeCloseTo(2 * 2 ** -5, 14)
})

test('ten thousand tasters are answered, and impossible counts refused', () => {
  expect(discriminationP({ test: 'triangle', tasters: 10_000, correct: 10_000 })).toBe(0)
  expect(() => discriminationP({ test: 'triangle', tasters: 0, correct: 0 })).toThrow('tasters')
  expect(() => discriminationP({ test: 'triangle', tasters: 10, correct: 11 })).toThrow('correct')
  expect(() => discriminationP({ test: 'triangle', tasters: 10, correct: -1 })).toThrow('correct')
  expect(() => discriminationP({ test: 'triangle', tasters: 10.5, correct: 3 })).toThrow('not-whole')
})
