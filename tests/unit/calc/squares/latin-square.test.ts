import fc from 'fast-check'
import { expect, test } from 'vitest'
import { latinSquare } from '@/lib/calc/squares/latin-square'
import { squareCounts } from '../../../support/square-counts'

test('each treatment is once in each row and each column, whatever the seed', () => {
  fc.assert(
    fc.property(fc.string(), fc.integer({ min: 2, max: 12 }), (seed, treatments) => {
      const square = latinSquare({ seed, treatments })
      expect(squareCounts(square)).toMatchObject({ rows: treatments, columns: treatments, inRow: [1], inColumn: [1] })
      expect(square.flat().every((one) => Number.isInteger(one) && one >= 1 && one <= treatments)).toBe(true)
    }),
  )
})

test('the seed decides', () => {
  expect(latinSquare({ seed: 'a', treatments: 6 })).toEqual(latinSquare({ seed: 'a', treatments: 6 }))
  expect(latinSquare({ seed: 'a', treatments: 6 })).not.toEqual(latinSquare({ seed: 'b', treatments: 6 }))
})

test('every one of the twelve squares of order three comes out, about equally often', () => {
  const seen = new Map<string, number>()
  for (let i = 0; i < 1200; i++) {
    const key = latinSquare({ seed: `seed ${i}`, treatments: 3 }).join(' ')
    seen.set(key, (seen.get(key) ?? 0) + 1)
  }
  expect(seen.size).toBe(12)
  // 100 expected each, standard deviation 9.6: four of them either way
  expect(Math.min(...seen.values())).toBeGreaterThan(61)
  expect(Math.max(...seen.values())).toBeLessThan(139)
})

test('less than two and more than fifty treatments are refused', () => {
  expect(() => latinSquare({ seed: 'a', treatments: 1 })).toThrow('out-of-range')
  expect(() => latinSquare({ seed: 'a', treatments: 51 })).toThrow('out-of-range')
})
