import fc from 'fast-check'
import { expect, test } from 'vitest'
import { fitRise } from '@/lib/calc/fermentation/fit-rise'
import { riseAt } from '@/lib/calc/fermentation/rise-curve'
import { forLong } from '@/tests/support/long'

const times = [0, 10, 20, 30, 45, 60, 75, 90, 110, 130, 160, 200]

test('a rise without scatter gives its own curve back', () =>
  fc.assert(
    fc.property(
      fc.constantFrom('gompertz' as const, 'logistic' as const),
      fc.double({ min: 40, max: 200, noNaN: true }),
      fc.double({ min: 0.8, max: 2.5, noNaN: true }),
      fc.double({ min: 0, max: 40, noNaN: true }),
      (kind, mostRisePct, steepestPctPerMin, lagMin) => {
        const curve = { kind, mostRisePct, steepestPctPerMin, lagMin }
        const readings = times.map((atMin) => ({ atMin, risePct: riseAt({ ...curve, atMin }).risePct }))
        const fit = fitRise({ readings, kind })
        expect(fit.mostRisePct / mostRisePct).toBeCloseTo(1, 5)
        expect(fit.steepestPctPerMin / steepestPctPerMin).toBeCloseTo(1, 5)
        expect(fit.lagMin).toBeCloseTo(lagMin, 3)
      },
    ),
    { numRuns: forLong(60, 600) },
  ))

test('the order of the readings does not matter, nor is the caller’s list changed', () => {
  const readings = [0, 3, 15, 40, 70, 90, 99, 104].map((risePct, i) => ({ atMin: 15 * i, risePct }))
  const turned = [...readings].reverse()
  const before = structuredClone(turned)
  expect(fitRise({ readings: turned, kind: 'logistic' }).mostRisePct).toBeCloseTo(
    fitRise({ readings, kind: 'logistic' }).mostRisePct,
    6,
  )
  expect(turned).toEqual(before)
})

test('readings that stop on the way up say that the end is a guess', () => {
  const readings = [0, 1, 4, 10, 19, 31].map((risePct, i) => ({ atMin: 10 * i, risePct }))
  expect(fitRise({ readings, kind: 'gompertz' }).warnings).toEqual(['end-not-seen'])
})

test.each([
  ['a dough that does not rise', [5, 5, 5, 5, 5], 'no-rise'],
  ['a dough that falls', [9, 7, 5, 3, 1], 'no-rise'],
])('%s is refused in words', (_what, rises, reason) =>
  expect(() => fitRise({ readings: rises.map((risePct, i) => ({ atMin: i, risePct })), kind: 'gompertz' })).toThrow(
    expect.objectContaining({ code: 'not-possible', facts: expect.objectContaining({ reason }) }),
  ),
)

test('few times, no numbers and too many are refused, and 10,000 readings are answered', () => {
  const at = (atMin: number, risePct: number) => ({ atMin, risePct })
  expect(() => fitRise({ readings: [at(0, 0), at(1, 1), at(2, 2)], kind: 'gompertz' })).toThrow(
    expect.objectContaining({ code: 'empty' }),
  )
  expect(() => fitRise({ readings: [at(0, 0), at(1, 1), at(1, 2), at(2, 2)], kind: 'gompertz' })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ reason: 'too-few-times' }) }),
  )
  expect(() => fitRise({ readings: [at(0, 0), at(1, 1), at(2, Number.NaN), at(3, 2)], kind: 'gompertz' })).toThrow(
    expect.objectContaining({ code: 'not-finite' }),
  )
  const many = Array.from({ length: 10_000 }, (_, i) =>
    at(i, 100 / (1 + Math.exp(-(i - 4000) / 500)) + Math.sin(i * i)),
  )
  expect(fitRise({ readings: many, kind: 'logistic' }).mostRisePct).toBeCloseTo(100, 0)
  expect(() => fitRise({ readings: [...many, at(10_000, 1)], kind: 'logistic' })).toThrow(
    expect.objectContaining({ code: 'out-of-range' }),
  )
})
