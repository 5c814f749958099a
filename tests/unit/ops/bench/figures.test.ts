import { expect, test } from 'vitest'
import { ratioOf, within } from '../../../../lib/ops/bench/figures'

test('a ratio sets the two medians of the same rounds against each other, and one slow round does not move it', () => {
  const pairs = [30, 33, 36, 900].map((subjectMs, i) => ({ subjectMs, referenceMs: [11, 11.5, 11.5, 300][i]! }))
  expect(ratioOf(pairs)).toEqual({ subjectMs: 34.5, referenceMs: 11.5, ratio: 3 })
})

test('a ratio to what took no time is refused', () => {
  expect(() => ratioOf([{ subjectMs: 3, referenceMs: 0 }])).toThrow('not above zero')
  expect(() => ratioOf([])).toThrow('empty')
})

test('the target itself is still within', () => {
  expect([within(2.99, 3), within(3, 3), within(3.01, 3)]).toEqual(['within', 'within', 'beyond'])
})
