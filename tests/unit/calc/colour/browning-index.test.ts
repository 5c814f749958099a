import fc from 'fast-check'
import { expect, test } from 'vitest'
import { browningIndex } from '@/lib/calc/colour/browning-index'

test('a grey has almost none: 1.75 / 5.645 is 0.31', () => {
  expect(browningIndex({ lightness: 60, a: 0, b: 0 }, '0.17')).toBeCloseTo((100 * (1.75 / 5.645 - 0.31)) / 0.17, 10)
})

test('more yellow is browner, darker is browner, and the divisors differ by their ratio', () => {
  const of = fc.record({
    lightness: fc.double({ min: 40, max: 90, noNaN: true }),
    a: fc.double({ min: 0, max: 20, noNaN: true }),
    b: fc.double({ min: 1, max: 40, noNaN: true }),
  })
  fc.assert(
    fc.property(of, (colour) => {
      const index = browningIndex(colour, '0.17')
      expect(browningIndex({ ...colour, b: colour.b + 1 }, '0.17')).toBeGreaterThan(index)
      expect(browningIndex({ ...colour, lightness: colour.lightness - 1 }, '0.17')).toBeGreaterThan(index)
      expect(browningIndex(colour, '0.172') * 0.172).toBeCloseTo(index * 0.17, 9)
    }),
  )
})

test('black, and a colour too yellow for its lightness, have no index', () => {
  expect(() => browningIndex({ lightness: 0, a: 0, b: 0 }, '0.17')).toThrow('no-browning-index')
  expect(() => browningIndex({ lightness: 10, a: 0, b: 60 }, '0.17')).toThrow('no-browning-index')
  expect(() => browningIndex({ lightness: NaN, a: 0, b: 60 }, '0.17')).toThrow('not-finite')
})
