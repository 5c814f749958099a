import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { niceTicks } from '@/lib/ui/charts/nice-ticks'

describe('ticks of an axis', () => {
  test.each([
    [{ low: -3.2, high: 13, most: 5 }, [-5, 0, 5, 10, 15], 0],
    [{ low: 0, high: 1, most: 5 }, [0, 0.2, 0.4, 0.6, 0.8, 1], 1],
    [{ low: 0, high: 0.3, most: 3 }, [0, 0.1, 0.2, 0.3], 1],
    [{ low: 990, high: 2010, most: 2 }, [0, 1000, 2000, 3000], 0],
    [{ low: -0.004, high: 0.011, most: 4 }, [-0.005, 0, 0.005, 0.01, 0.015], 3],
  ])('%j', (q, values, digits) => {
    expect(niceTicks(q)).toMatchObject({ values, digits })
  })

  test('hold the range between them, at even steps of 1, 2 or 5, and not too many', () => {
    const size = fc.double({ min: 1e-6, max: 1e6, noNaN: true })
    fc.assert(
      fc.property(
        fc.double({ min: -1e5, max: 1e5, noNaN: true }),
        size,
        fc.integer({ min: 1, max: 12 }),
        (low, width, most) => {
          fc.pre(width > Math.abs(low) * 1e-6)
          const { values, step } = niceTicks({ low, high: low + width, most })
          expect(values[0]!).toBeLessThanOrEqual(low + step * 1e-6)
          expect(values.at(-1)!).toBeGreaterThanOrEqual(low + width - step * 1e-6)
          expect(values.length).toBeLessThanOrEqual(most + 3)
          expect([1, 2, 5]).toContain(Number(step.toExponential(0)[0]))
          values
            .slice(1)
            .forEach((value, i) => expect(value - values[i]!).toBeCloseTo(step, 5 - Math.floor(Math.log10(step))))
        },
      ),
    )
  })

  test('refuse a range without width', () => {
    expect(() => niceTicks({ low: 1, high: 1, most: 5 })).toThrow(RangeError)
    expect(() => niceTicks({ low: 2, high: 1, most: 5 })).toThrow(RangeError)
    expect(() => niceTicks({ low: 0, high: Infinity, most: 5 })).toThrow(RangeError)
  })
})
