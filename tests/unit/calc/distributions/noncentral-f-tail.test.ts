import fc from 'fast-check'
import { expect, test } from 'vitest'
import { fTail } from '@/lib/calc/distributions/f-tail'
import { noncentralFTail } from '@/lib/calc/distributions/noncentral-f-tail'
import { noncentralTTail } from '@/lib/calc/distributions/noncentral-t-tail'

test('without true effects it is plain F', () => {
  const q = { f: 3.1, df1: 3, df2: 16 }
  for (const tail of ['lower', 'upper'] as const) {
    expect(noncentralFTail({ ...q, noncentrality: 0, tail })).toBe(fTail({ ...q, tail }))
  }
})

test('with one numerator degree of freedom it is the square of the noncentral t', () => {
  for (const noncentrality of [0.3, 2, 9]) {
    for (const t of [0.4, 2.5, 12]) {
      const q = { df: 11, noncentrality }
      const both = noncentralTTail({ ...q, t, tail: 'upper' }) + noncentralTTail({ ...q, t: -t, tail: 'lower' })
      const got = noncentralFTail({ f: t * t, df1: 1, df2: 11, noncentrality: noncentrality ** 2, tail: 'upper' })
      expect(got / both).toBeCloseTo(1, 11)
    }
  }
})

test('the tails add up to one, and larger true effects move it up', () => {
  const q = fc.record({
    f: fc.double({ min: 0, max: 200, noNaN: true }),
    df1: fc.double({ min: 0.5, max: 50, noNaN: true }),
    df2: fc.double({ min: 0.5, max: 1000, noNaN: true }),
    noncentrality: fc.double({ min: 0, max: 500, noNaN: true }),
  })
  fc.assert(
    fc.property(q, (point) => {
      const upper = noncentralFTail({ ...point, tail: 'upper' })
      expect(upper + noncentralFTail({ ...point, tail: 'lower' })).toBeCloseTo(1, 11)
      expect(
        noncentralFTail({ ...point, noncentrality: point.noncentrality + 1, tail: 'upper' }),
      ).toBeGreaterThanOrEqual(upper - 1e-12)
    }),
    { seed: 20, numRuns: 100 },
  )
})

test('ends and corners of the range', () => {
  const q = { df1: 3, df2: 16, noncentrality: 5 }
  expect(noncentralFTail({ ...q, f: 0, tail: 'upper' })).toBeCloseTo(1, 14)
  expect(noncentralFTail({ ...q, f: 0, tail: 'lower' })).toBe(0)
  expect(noncentralFTail({ ...q, f: 1e300, tail: 'upper' })).toBe(0)
  const corner = noncentralFTail({ f: 3000, df1: 3, df2: 1e6, noncentrality: 1e4, tail: 'upper' })
  expect(corner).toBeGreaterThan(0.9)
})

test.each([
  ['f', { f: -1 }, 'out-of-range'],
  ['f', { f: NaN }, 'not-finite'],
  ['df1', { df1: 0 }, 'out-of-range'],
  ['df2', { df2: Infinity }, 'not-finite'],
  ['noncentrality', { noncentrality: -1 }, 'out-of-range'],
  ['noncentrality', { noncentrality: 2e4 }, 'out-of-range'],
])('bad input is refused at its field: %s %j', (field, change, code) => {
  const q = { f: 2, df1: 3, df2: 9, noncentrality: 1, tail: 'upper', ...change } as const
  expect(() => noncentralFTail(q)).toThrow(code)
  expect(() => noncentralFTail(q)).toThrow(`"${field}"`)
})
