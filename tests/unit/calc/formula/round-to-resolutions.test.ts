import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { roundToResolutions } from '@/lib/calc/formula/round-to-resolutions'
import { forLong } from '@/tests/support/long'

test('largest remainder on one scale', () => {
  const result = roundToResolutions([
    { id: 'a', massG: 33.3, resolutionG: 1 },
    { id: 'b', massG: 33.3, resolutionG: 1 },
    { id: 'c', massG: 33.4, resolutionG: 1 },
  ])
  expect(result.lines.map((l) => l.massG)).toEqual([33, 33, 34])
  expect(result.driftG).toBeCloseTo(0, 12)
})

test('a finer scale takes up what a coarser one left over, by one step a line at most', () => {
  const result = roundToResolutions([
    { id: 'flour', massG: 1002.3, resolutionG: 5 },
    { id: 'water', massG: 651.4, resolutionG: 1 },
  ])
  expect(result.lines.map((l) => l.massG)).toEqual([1000, 652])
})

test('a mass on a mark stays there although 0.3 / 0.1 is not 3 in binary', () => {
  const [only] = roundToResolutions([{ id: 'a', massG: 0.3, resolutionG: 0.1 }]).lines
  expect(only?.massG).toBe(0.3)
})

test('a line that the scale cannot show is warned of', () => {
  expect(roundToResolutions([{ id: 'enzyme', massG: 0.02, resolutionG: 1 }]).warnings).toEqual([
    { code: 'rounded-to-zero', lineId: 'enzyme' },
  ])
})

describe('properties', () => {
  const row = fc.record({
    massG: fc.double({ min: 0, max: 20_000, noNaN: true }),
    resolutionG: fc.constantFrom(0.001, 0.01, 0.1, 0.5, 1, 2, 5, 10),
  })
  test('each line moves by less than a step, and the total by half of the coarsest step at most', () => {
    fc.assert(
      fc.property(fc.array(row, { minLength: 1, maxLength: 30 }), (rows) => {
        const result = roundToResolutions(rows.map((r, i) => ({ id: String(i), ...r })))
        const coarsest = Math.max(...rows.map((r) => r.resolutionG))
        expect(Math.abs(result.driftG)).toBeLessThanOrEqual(coarsest / 2 + 1e-6)
        result.lines.forEach((l, i) => {
          const step = rows[i]?.resolutionG ?? 0
          expect(Math.abs(l.massG - l.exactG)).toBeLessThan(step * (1 + 1e-6))
          expect(Math.abs(l.massG / step - Math.round(l.massG / step))).toBeLessThan(1e-6)
        })
      }),
      { seed: 1704, numRuns: forLong(500, 10_000) },
    )
  })
})
