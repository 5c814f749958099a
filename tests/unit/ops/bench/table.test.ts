import { expect, test } from 'vitest'
import { setTable } from '../../../../lib/ops/bench/table'

test('a table has columns as wide as their longest cell, names to the left and figures to the right', () => {
  const text = setTable({
    title: 'Ovens',
    notes: ['In minutes.'],
    columns: ['oven', 'min', 'target'],
    rows: [
      ['deck', '9.5', 'within'],
      ['rack oven', '120.0', ''],
    ],
  })
  expect(text.split('\n')).toEqual([
    '── Ovens ──',
    'In minutes.',
    '',
    'oven         min  target',
    '─────────  ─────  ──────',
    'deck         9.5  within',
    'rack oven  120.0',
  ])
})

test('a table without rows still shows what it would hold', () => {
  expect(setTable({ title: 'None', notes: [], columns: ['a', 'b'], rows: [] })).toBe('── None ──\n\na  b\n─  ─')
})

test('a row that does not fit the headings is refused by name', () => {
  expect(() => setTable({ title: 'Ovens', notes: [], columns: ['oven', 'min'], rows: [['deck']] })).toThrow(
    'Ovens: 1 cells under 2 headings (deck)',
  )
})
