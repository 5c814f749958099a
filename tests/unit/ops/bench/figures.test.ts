import { expect, test } from 'vitest'
import { median, ratioOf, within } from '../../../../lib/ops/bench/figures'

test.each([
  { values: [7], wanted: 7 },
  { values: [9, 1], wanted: 5 },
  { values: [3, 1, 2], wanted: 2 },
  { values: [10, 9, 2, 1], wanted: 5.5 },
  { values: [100, 20, 3], wanted: 20 },
])('the median of $values is $wanted', ({ values, wanted }) => {
  const before = [...values]
  expect(median(values)).toBe(wanted)
  expect(values).toEqual(before)
})

test('there is no median of nothing, nor of what was not measured', () => {
  expect(() => median([])).toThrow('no median of 0 values')
  expect(() => median([1, Number.NaN])).toThrow('no median')
})

test('a ratio sets the two medians of the same rounds against each other, and one slow round does not move it', () => {
  const pairs = [30, 33, 36, 900].map((subjectMs, i) => ({ subjectMs, referenceMs: [11, 11.5, 11.5, 300][i]! }))
  expect(ratioOf(pairs)).toEqual({ subjectMs: 34.5, referenceMs: 11.5, ratio: 3 })
})

test('a ratio to what took no time is refused', () => {
  expect(() => ratioOf([{ subjectMs: 3, referenceMs: 0 }])).toThrow('not above zero')
  expect(() => ratioOf([])).toThrow('no median')
})

test('the target itself is still within', () => {
  expect([within(2.99, 3), within(3, 3), within(3.01, 3)]).toEqual(['within', 'within', 'beyond'])
})
