import { expect, test } from 'vitest'
import { leastCorrect } from '@/lib/calc/panel/least-correct'
import { leastCorrectTable } from '@/lib/calc/panel/least-correct-table'

test('it has a row for each number and level, as one alone would be', () => {
  const rows = leastCorrectTable({ test: 'triangle', fromTasters: 20, toTasters: 22, alphas: [0.05, 0.01] })
  expect(rows.map(({ tasters, alpha }) => [tasters, alpha])).toEqual([
    [20, 0.05],
    [20, 0.01],
    [21, 0.05],
    [21, 0.01],
    [22, 0.05],
    [22, 0.01],
  ])
  for (const { tasters, alpha, ...found } of rows)
    expect(found).toEqual(leastCorrect({ test: 'triangle', tasters, alpha }))
})

test('a range the wrong way round, no level, and a table too long to print are refused', () => {
  const asked = { test: 'paired', fromTasters: 5, toTasters: 6, alphas: [0.05] } as const
  expect(() => leastCorrectTable({ ...asked, toTasters: 4 })).toThrow('range-reversed')
  expect(() => leastCorrectTable({ ...asked, alphas: [] })).toThrow('empty')
  expect(() => leastCorrectTable({ ...asked, toTasters: 10_000 })).toThrow('too-many-rows')
  expect(() => leastCorrectTable({ ...asked, fromTasters: 0 })).toThrow('fromTasters')
})
