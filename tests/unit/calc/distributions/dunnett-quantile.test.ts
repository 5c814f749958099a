import { expect, test } from 'vitest'
import { dunnettQuantile } from '@/lib/calc/distributions/dunnett-quantile'
import { dunnettTail } from '@/lib/calc/distributions/dunnett-tail'

test('the quantile undoes the tail', () => {
  for (const loadings of [
    [0.7, 0.5, 0.9],
    [0.99, 0.95],
    [0.7, 0.7, 0.7, 0.7, 0.7, 0.7],
    [-0.6, 0, 0.6],
  ]) {
    for (const df of [0.5, 4, 30, 1e5]) {
      for (const p of [0.5, 0.05, 1e-3, 1e-10]) {
        for (const sides of ['one', 'two'] as const) {
          const c = dunnettQuantile({ p, df, loadings, sides })
          const back = dunnettTail({ c, df, loadings, sides }).upper
          expect(Math.abs(back / p - 1), JSON.stringify({ loadings, df, p, sides, back })).toBeLessThan(1e-9)
        }
      }
    }
  }
})

test.each([
  ['p', { p: 0 }, 'out-of-range'],
  ['p', { p: 0.6 }, 'out-of-range'],
  ['p', { p: NaN }, 'not-finite'],
  ['df', { df: 0 }, 'out-of-range'],
  ['loadings', { loadings: [] }, 'empty'],
  ['loadings[1]', { loadings: [0.5, 1] }, 'out-of-range'],
])('bad input is refused at its field: %s %j', (field, change, code) => {
  const q = { p: 0.05, df: 9, loadings: [0.7, 0.7], sides: 'two', ...change } as const
  expect(() => dunnettQuantile(q)).toThrow(code)
  expect(() => dunnettQuantile(q)).toThrow(`"${field}"`)
})

test('arms that are nearly one arm need hardly any adjustment', () => {
  const one = dunnettQuantile({ p: 0.05, df: 10, loadings: [0.7], sides: 'two' })
  const same = dunnettQuantile({ p: 0.05, df: 10, loadings: [0.999, 0.999, 0.999], sides: 'two' })
  expect(same).toBeGreaterThan(one)
  expect(same).toBeLessThan(one * 1.06)
})
