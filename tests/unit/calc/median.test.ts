import { expect, test } from 'vitest'
import { median } from '@/lib/calc/median'

test.each([
  [[7], 7],
  [[3, 1, 2], 2],
  [[9, 1], 5],
  [[4, 1, 3, 2], 2.5],
  [[10, 9, 2, 1], 5.5],
  [[100, 20, 3], 20],
  [[-1, -5, 10], -1],
  [[10, 9, 100], 10],
])('the median of %j is %d', (values, wanted) => expect(median(values)).toBe(wanted))

test('what is given stays in its order', () => {
  const values = [3, 1, 2]
  median(values)
  expect(values).toEqual([3, 1, 2])
})

test('there is no median of nothing, nor of what is no number', () => {
  expect(() => median([])).toThrow('empty')
  expect(() => median([1, Number.NaN])).toThrow('not-finite')
  expect(() => median([1, Infinity], 'y')).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'y[1]' }) }),
  )
})
