import fc from 'fast-check'
import { expect, test } from 'vitest'
import { forLong, isLong } from '../../support/long'

test('a property that does not say how often is tried a hundred times, and more in the long form', () => {
  let runs = 0
  fc.assert(
    fc.property(fc.integer(), () => {
      runs++
    }),
  )
  expect(runs).toBe(isLong ? 2_000 : 100)
  expect(forLong(1, 2)).toBe(isLong ? 2 : 1)
})

test('a property without a seed of its own tries the same values each time', () => {
  const tried = () => {
    const values: number[] = []
    fc.assert(fc.property(fc.integer(), (value) => void values.push(value)))
    return values
  }
  expect(tried()).toEqual(tried())
})
