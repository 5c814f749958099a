import { expect, test } from 'vitest'
import { noncentralFTail } from '@/lib/calc/distributions/noncentral-f-tail'
import { noncentralTTail } from '@/lib/calc/distributions/noncentral-t-tail'
import { publishedCheck } from '@/tests/support/published-check'
import rows from './data/noncentral-grid.json'

// Source: mpmath 1.3.0 with 40 digits, data/noncentral-grid.py.
const SOURCE = 'mpmath 1.3.0 with 40 digits, data/noncentral-grid.py'
const TOLERANCE = 1e-10

type Row = { name: string; x: number; df1: number; df2?: number; ncp: number; tail: string; value: number }
const all: Row[] = rows

const sideOf = (row: Row) => (row.tail === 'lower' ? 'lower' : 'upper')
const got = (row: Row) =>
  row.name === 't'
    ? noncentralTTail({ t: row.x, df: row.df1, noncentrality: row.ncp, tail: sideOf(row) })
    : noncentralFTail({ f: row.x, df1: row.df1, df2: row.df2!, noncentrality: row.ncp, tail: sideOf(row) })

test.each(['t', 'f'])('every point of the grid for the noncentral %s', (name) => {
  const chosen = all.filter((row) => row.name === name)
  expect(chosen.length).toBeGreaterThan(300)
  const misses = chosen
    .map((row) => ({ ...row, got: got(row), difference: Math.abs(got(row) / row.value - 1) }))
    .filter((row) => !(row.difference <= TOLERANCE))
  expect(misses).toEqual([])
})

// The far tails by themselves: the four smallest of either function and side.
for (const name of ['t', 'f']) {
  for (const tail of ['lower', 'upper']) {
    const side = all.filter((row) => row.name === name && row.tail === tail && row.value > 1e-120)
    for (const row of side.sort((a, b) => a.value - b.value).slice(0, 4)) {
      publishedCheck({
        of: [name === 't' ? 'distributions/noncentral-t-tail' : 'distributions/noncentral-f-tail'],
        what: `far ${tail} tail, ${JSON.stringify(row)}`,
        source: SOURCE,
        status: 'computed',
        expected: row.value,
        got: () => got(row),
        tolerance: TOLERANCE,
        why: 'stated accuracy, far tails included',
      })
    }
  }
}
