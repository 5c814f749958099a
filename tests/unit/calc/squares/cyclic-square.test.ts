import fc from 'fast-check'
import { expect, test } from 'vitest'
import { cyclicSquare } from '@/lib/calc/squares/cyclic-square'
import { squareCounts } from '../../../support/square-counts'

test('each row is the one before it moved on by one', () => {
  expect(cyclicSquare({ treatments: 3 })).toEqual([
    [1, 2, 3],
    [2, 3, 1],
    [3, 1, 2],
  ])
})

test('each treatment is once in each row and each column, whatever the size', () => {
  fc.assert(
    fc.property(fc.integer({ min: 2, max: 50 }), (treatments) => {
      expect(squareCounts(cyclicSquare({ treatments }))).toMatchObject({
        rows: treatments,
        columns: treatments,
        inRow: [1],
        inColumn: [1],
      })
    }),
    { numRuns: 20 },
  )
})

test.each([0, 1, 2.5, 51, 10_000, NaN, Infinity, -3])('a square of %s is refused', (treatments) => {
  expect(() => cyclicSquare({ treatments })).toThrow('treatments')
})
