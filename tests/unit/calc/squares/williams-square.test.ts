import { expect, test } from 'vitest'
import { williamsSquare } from '@/lib/calc/squares/williams-square'
import { squareCounts } from '../../../support/square-counts'

const sizes = Array.from({ length: 19 }, (_, i) => i + 2)

test.each(sizes)(
  'of %i: each ordered pair follows once if even, twice if odd, and so often is each in each place',
  (treatments) => {
    const times = treatments % 2 === 0 ? 1 : 2
    expect(squareCounts(williamsSquare({ treatments }))).toEqual({
      rows: treatments * times,
      columns: treatments,
      inRow: [1],
      inColumn: [times],
      after: [times],
    })
  },
)

test('the second square of an odd number is the first read backwards', () => {
  const rows = williamsSquare({ treatments: 3 })
  expect(rows).toEqual([
    [1, 2, 3],
    [2, 3, 1],
    [3, 1, 2],
    [3, 2, 1],
    [1, 3, 2],
    [2, 1, 3],
  ])
})

test.each([0, 1, 51, 3.5, NaN, -2])('a square of %s is refused', (treatments) => {
  expect(() => williamsSquare({ treatments })).toThrow('treatments')
})
