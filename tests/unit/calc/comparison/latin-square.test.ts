import fc from 'fast-check'
import { expect, test } from 'vitest'
import { latinSquareAnova } from '@/lib/calc/comparison/latin-square'
import { expectRefusal, moved, reading } from '@/tests/support/arm-rows'

/** A cyclic square of t arms with the values given, row by row. */
const square = (t: number, values: readonly number[]) =>
  values.slice(0, t * t).map((y, i) => {
    const [row, column] = [Math.floor(i / t), i % t]
    return { row: `r${row}`, column: `c${column}`, arm: `a${(row + column) % t}`, y }
  })
const rowsOf = fc.array(reading, { minLength: 16, maxLength: 16 }).map((values) => square(4, values))

test('sums of squares add up to the whole, and levels of rows and columns do not matter to the arms', () => {
  fc.assert(
    fc.property(rowsOf, (rows) => {
      const got = latinSquareAnova({ rows, confidence: 0.95 })
      const mean = rows.reduce((sum, { y }) => sum + y, 0) / 16
      const whole = rows.reduce((sum, { y }) => sum + (y - mean) ** 2, 0)
      expect(got.anova.reduce((sum, { sumSquares }) => sum + sumSquares, 0)).toBeCloseTo(whole, 4)
      const shifted = rows.map((cell) => ({
        ...cell,
        y: cell.y + 64 * Number(cell.row.slice(1)) - 32 * Number(cell.column.slice(1)),
      }))
      const other = latinSquareAnova({ rows: shifted, confidence: 0.95 })
      expect(other.anova[2]!.f).toBeCloseTo(got.anova[2]!.f!, 5)
      expect(other.residualSd).toBeCloseTo(got.residualSd, 7)
    }),
  )
})
test('half the interval of a difference is t standard errors', () => {
  const got = latinSquareAnova({ rows: square(4, [3, 5, 1, 8, 2, 9, 4, 7, 6, 6, 2, 1, 9, 3, 5, 4]), confidence: 0.95 })
  // t of 6 df at 0.975 is 2.446912 in every table
  expect(got.differenceHalfWidth / got.differenceSe).toBeCloseTo(2.446912, 5)
})
test('a square of a hundred arms, ten thousand values, is no matter', () => {
  const values = Array.from({ length: 10_000 }, (_, i) => Math.sin(i * i))
  expect(latinSquareAnova({ rows: square(100, values), confidence: 0.95 }).residualDf).toBe(99 * 98)
})
test('what is no Latin square is refused, with the reason', () => {
  const rows = square(3, [1, 2, 4, 3, 9, 5, 7, 6, 8])
  const q = { confidence: 0.95 }
  expectRefusal(() => latinSquareAnova({ rows: rows.slice(1), ...q }), 'wrong-shape', 'not-a-square')
  expectRefusal(
    () => latinSquareAnova({ rows: [{ ...rows[0]!, arm: 'a1' }, { ...rows[1]!, arm: 'a0' }, ...rows.slice(2)], ...q }),
    'wrong-shape',
    'repeated-in-column',
  )
  expectRefusal(
    () => latinSquareAnova({ rows: [{ ...rows[0]!, arm: 'a1' }, ...rows.slice(1)], ...q }),
    'wrong-shape',
    'repeated-in-row',
  )
  expectRefusal(() => latinSquareAnova({ rows: square(2, [1, 2, 3, 5]), ...q }), 'out-of-range')
  expectRefusal(() => latinSquareAnova({ rows: moved(rows, 5, 0), ...q }), 'not-possible', 'zero-variance')
  expectRefusal(() => latinSquareAnova({ rows: [], ...q }), 'empty')
})
