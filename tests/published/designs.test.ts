import { describe, expect, test } from 'vitest'
import { cyclicSquare } from '@/lib/calc/squares/cyclic-square'
import { latinSquare } from '@/lib/calc/squares/latin-square'
import { williamsSquare } from '@/lib/calc/squares/williams-square'
import type { CalcId } from '@/lib/calc/catalogue'
import { publishedCheck } from '@/tests/support/published-check'
import { squareCounts } from '@/tests/support/square-counts'
import cases from './data/designs.json'

for (const { title, inputs, expected, ...one } of cases) {
  describe(title, () => {
    const status = `computed with ${one.computedWith}; second route: ${one.checkedWith}`
    const check = (of: CalcId, what: string, value: number, got: () => number) =>
      publishedCheck({
        of: [of],
        what,
        source: `counting argument: ${title}`,
        status,
        expected: value,
        got,
        tolerance: 0,
        why: 'a count',
      })
    const { treatments } = inputs
    if (expected.sequences !== undefined) {
      const got = () => squareCounts(williamsSquare({ treatments }))
      check('squares/williams-square', 'sequences', expected.sequences, () => got().rows)
      check('squares/williams-square', 'periods', expected.periods, () => got().columns)
      check(
        'squares/williams-square',
        'times in each period',
        expected.times_each_treatment_in_each_period,
        () => got().inColumn[0]!,
      )
      check(
        'squares/williams-square',
        'times each ordered pair',
        expected.times_each_ordered_pair_adjacent,
        () => got().after[0]!,
      )
      check(
        'squares/williams-square',
        'adjacent pairs',
        expected.total_adjacent_pairs,
        () => got().rows * (got().columns - 1),
      )
      test('the counts are the same for all', () => {
        expect(got()).toMatchObject({ inRow: [1], inColumn: [expect.any(Number)], after: [expect.any(Number)] })
      })
    } else {
      const squares = [
        ['squares/latin-square', () => latinSquare({ seed: 'a', treatments })],
        ['squares/cyclic-square', () => cyclicSquare({ treatments })],
      ] as const
      for (const [of, square] of squares) {
        check(of, 'rows', expected.rows, () => squareCounts(square()).rows)
        check(of, 'columns', expected.columns, () => squareCounts(square()).columns)
        check(of, 'cells', expected.total_cells, () => square().flat().length)
        test(`${of}: each once in each row and column`, () => {
          expect(squareCounts(square())).toMatchObject({ inRow: [1], inColumn: [1] })
        })
      }
    }
  })
}
