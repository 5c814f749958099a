import { expect, test } from 'vitest'
import { testAgainstResidual } from '@/lib/calc/mixed-model/test-against-residual'

const batches = ['a', 'a', 'b', 'b', 'c', 'c']
const one = batches.map(() => [1])
const y = [-3, -1, 0, 2, 1, 1]

test('without anything else it is the table of batches and loaves', () => {
  // By hand: means −2, 1, 1; between 2 · (4 + 1 + 1) = 12 on 2 df, within 2 + 2 + 0 = 4 on 3 df.
  const { df1, df2, f, p } = testAgainstResidual({ x: one, y, levels: batches })!
  expect([df1, df2]).toEqual([2, 3])
  expect(f).toBeCloseTo(6 / (4 / 3), 12)
  // With 2 numerator df the tail has a closed form: (1 + 2 f / df2)^(−df2 / 2).
  expect(p).toBeCloseTo((1 + (2 * 4.5) / 3) ** -1.5, 12)
})

test('a constant added, and columns that say the same as others, change nothing', () => {
  const plain = testAgainstResidual({ x: one, y, levels: batches })
  const twice = testAgainstResidual({ x: batches.map(() => [1, 2]), y: y.map((value) => value + 5), levels: batches })!
  expect([twice.df1, twice.df2]).toEqual([plain!.df1, plain!.df2])
  expect(twice.f).toBeCloseTo(plain!.f, 10)
})

test('the days that batches are nested in take their part first', () => {
  // By hand: day one has batches a and b (means −2 and 1), day two c alone: 2 · 2 · 1.5² = 9 on 1 df.
  const { df1, df2, f } = testAgainstResidual({ x: one, y, levels: batches, within: ['1', '1', '1', '1', '2', '2'] })!
  expect([df1, df2]).toEqual([1, 3])
  expect(f).toBeCloseTo(9 / (4 / 3), 12)
})

test('there is no test where nothing is left to test by', () => {
  expect(testAgainstResidual({ x: one, y, levels: ['a', 'b', 'c', 'd', 'e', 'f'] })).toBeNull()
  expect(testAgainstResidual({ x: one, y: [-1, -1, 0, 0, 1, 1], levels: batches })).toBeNull()
  expect(testAgainstResidual({ x: one, y, levels: batches.map(() => 'a') })).toBeNull()
})
