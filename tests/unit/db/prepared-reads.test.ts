import { expect, test } from 'vitest'
import { namePreparedReads } from '../../../lib/db/prepared-reads'

test('a read has one name, another read another', () => {
  const nameOf = namePreparedReads()
  const [first, second] = [nameOf({ sql: 'SELECT 1' }), nameOf({ sql: 'SELECT 2' })]
  expect(first).not.toBe('')
  expect(second).not.toBe(first)
  expect(nameOf({ sql: 'SELECT 1' })).toBe(first)
})

test('a read that was written over several lines has a name too', () => {
  expect(namePreparedReads()({ sql: '\n      SELECT DISTINCT ON (id) id' })).not.toBe('')
})

test('a write has none', () => {
  expect(namePreparedReads()({ sql: 'UPDATE session SET last_seen_at = $1' })).toBe('')
})

test('reads beyond the number that is kept go without a name, and those that have one keep it', () => {
  const nameOf = namePreparedReads()
  const names = Array.from({ length: 600 }, (_, i) => nameOf({ sql: `SELECT ${i}` }))
  expect(new Set(names.filter((name) => name !== '')).size).toBe(500)
  expect(names.at(-1)).toBe('')
  expect(nameOf({ sql: 'SELECT 0' })).toBe(names[0])
})
