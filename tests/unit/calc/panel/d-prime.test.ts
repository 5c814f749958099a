import fc from 'fast-check'
import { expect, test } from 'vitest'
import { correctShare } from '@/lib/calc/panel/correct-share'
import { dPrime } from '@/lib/calc/panel/d-prime'

const kind = fc.constantFrom('triangle', 'duo-trio', 'paired', 'three-afc')
const counts = fc
  .integer({ min: 2, max: 500 })
  .chain((tasters) => fc.record({ tasters: fc.constant(tasters), correct: fc.integer({ min: 0, max: tasters }) }))

test('it is the inverse of the share of right answers, and lies within its limits', () => {
  fc.assert(
    fc.property(kind, counts, (test, asked) => {
      const found = dPrime({ ...asked, test, confidence: 0.95 })
      if (found.dPrime !== null && found.dPrime > 0) {
        expect(correctShare({ test, dPrime: found.dPrime }).correctShare).toBeCloseTo(asked.correct / asked.tasters, 12)
        expect(found.standardError).toBeGreaterThan(0)
      } else {
        expect(found.standardError).toBeNull()
        expect(found.warnings).toHaveLength(1)
      }
      expect(found.dPrimeLow).toBeLessThanOrEqual(found.dPrime ?? Infinity)
      expect(found.dPrimeHigh ?? Infinity).toBeGreaterThanOrEqual(found.dPrime ?? 0)
      for (const value of Object.values(found)) if (typeof value === 'number') expect(value).toSatisfy(Number.isFinite)
    }),
  )
})

test('all right has a lower limit and no upper one', () => {
  const found = dPrime({ test: 'triangle', tasters: 10, correct: 10, confidence: 0.95 })
  expect(found).toMatchObject({ dPrime: null, dPrimeHigh: null, standardError: null, warnings: ['all-correct'] })
  expect(found.dPrimeLow).toBeGreaterThan(1)
})

test('fewer right than by guessing is no difference, and says so', () => {
  expect(dPrime({ test: 'paired', tasters: 20, correct: 3, confidence: 0.9 })).toMatchObject({
    dPrime: 0,
    warnings: ['at-or-below-chance'],
  })
  // a third of 21 exactly, though a third is no exact number
  expect(dPrime({ test: 'triangle', tasters: 21, correct: 7, confidence: 0.9 }).dPrime).toBe(0)
})

test('the largest panel is answered, bad input is refused', () => {
  expect(dPrime({ test: 'triangle', tasters: 10_000, correct: 9999, confidence: 0.9999 }).dPrime).toBeGreaterThan(8)
  expect(() => dPrime({ test: 'triangle', tasters: 10, correct: 5, confidence: 95 })).toThrow('confidence')
  expect(() => dPrime({ test: 'triangle', tasters: 10, correct: 12, confidence: 0.95 })).toThrow('correct')
})
