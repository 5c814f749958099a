import { expect, test } from 'vitest'
import { centreInBlocks } from '@/lib/calc/comparison/centre-in-blocks'

test('each block is left with a mean of zero, and its own mean is told', () => {
  const { columns, blocks } = centreInBlocks(
    [
      [1, 3, 10, 14],
      [0, 1, 0, 1],
    ],
    ['a', 'a', 'b', 'b'],
  )
  expect(columns).toEqual([
    [-1, 1, -2, 2],
    [-0.5, 0.5, -0.5, 0.5],
  ])
  expect(blocks).toEqual([
    { count: 2, means: [2, 0.5] },
    { count: 2, means: [12, 0.5] },
  ])
})
test('a column that differs between blocks only is nothing but zeros, not rounding', () => {
  const { columns } = centreInBlocks([[0.1, 0.1, 0.1, 0.7, 0.7, 0.7]], ['a', 'a', 'a', 'b', 'b', 'b'])
  expect(columns[0]).toEqual([0, 0, 0, 0, 0, 0])
})
