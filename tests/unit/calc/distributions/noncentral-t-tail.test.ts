import fc from 'fast-check'
import { expect, test } from 'vitest'
import { noncentralTTail } from '@/lib/calc/distributions/noncentral-t-tail'
import { normalTail } from '@/lib/calc/distributions/normal-tail'
import { tTail } from '@/lib/calc/distributions/t-tail'

test('without a shift it is plain t', () => {
  for (const df of [0.5, 3, 40, 5000]) {
    for (const t of [-9, -1, 0, 0.3, 4, 30]) {
      const q = { t, df, tail: 'upper' } as const
      expect(noncentralTTail({ ...q, noncentrality: 0 }) / tTail(q)).toBeCloseTo(1, 11)
    }
  }
})

test('at 0 only the sign of the shifted normal counts', () => {
  for (const noncentrality of [-12, -1, 0.5, 30]) {
    const normal = normalTail({ z: noncentrality, tail: 'upper' })
    expect(noncentralTTail({ t: 0, df: 7, noncentrality, tail: 'lower' }) / normal).toBeCloseTo(1, 11)
  }
})

test('the tails add up to one, turned round they swap, and a larger shift moves it up', () => {
  const q = fc.record({
    t: fc.double({ min: -60, max: 60, noNaN: true }),
    df: fc.double({ min: 0.5, max: 2000, noNaN: true }),
    noncentrality: fc.double({ min: -40, max: 40, noNaN: true }),
  })
  fc.assert(
    fc.property(q, ({ t, df, noncentrality }) => {
      const upper = noncentralTTail({ t, df, noncentrality, tail: 'upper' })
      expect(upper + noncentralTTail({ t, df, noncentrality, tail: 'lower' })).toBeCloseTo(1, 11)
      expect(noncentralTTail({ t: -t, df, noncentrality: -noncentrality, tail: 'lower' })).toBeCloseTo(upper, 11)
      expect(noncentralTTail({ t, df, noncentrality: noncentrality + 0.5, tail: 'upper' })).toBeGreaterThanOrEqual(
        upper - 1e-12,
      )
    }),
    { seed: 20, numRuns: 200 },
  )
})

test('corners of the range come back, as a number', () => {
  for (const t of [-1e6, 1e6]) {
    for (const noncentrality of [-1000, 1000]) {
      const got = noncentralTTail({ t, df: 0.5, noncentrality, tail: 'upper' })
      expect(got).toBeGreaterThanOrEqual(0)
      expect(got).toBeLessThanOrEqual(1)
    }
  }
})

test.each([
  ['t', { t: NaN }, 'not-finite'],
  ['t', { t: Infinity }, 'not-finite'],
  ['df', { df: 0 }, 'out-of-range'],
  ['df', { df: -4 }, 'out-of-range'],
  ['noncentrality', { noncentrality: 1001 }, 'out-of-range'],
  ['noncentrality', { noncentrality: Number.NEGATIVE_INFINITY }, 'not-finite'],
])('bad input is refused at its field: %s %j', (field, change, code) => {
  const q = { t: 2, df: 9, noncentrality: 1, tail: 'upper', ...change } as const
  expect(() => noncentralTTail(q)).toThrow(code)
  expect(() => noncentralTTail(q)).toThrow(`"${field}"`)
})
