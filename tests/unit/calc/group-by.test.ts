import { expect, test } from 'vitest'
import { groupBy } from '@/lib/calc/group-by'

test('names and members keep the order in which they came, and a name of every object is a name like others', () => {
  const groups = groupBy([3, 1, 4, 2], (value) => (value % 2 ? 'constructor' : 'even'))
  expect([...groups]).toEqual([
    ['constructor', [3, 1]],
    ['even', [4, 2]],
  ])
})
