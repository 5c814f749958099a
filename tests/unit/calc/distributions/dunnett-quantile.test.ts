import { expect, test } from 'vitest'
import { dunnettQuantile } from '@/lib/calc/distributions/dunnett-quantile'
import { dunnettTail } from '@/lib/calc/distributions/dunnett-tail'

test('the quantile undoes the tail', () => {
  for (const df of [1, 4, 30]) {
    for (const p of [0.2, 0.05, 0.001]) {
      const loadings = [0.7, 0.5, 0.9]
      const c = dunnettQuantile({ p, df, loadings, sides: 'two' })
      expect(dunnettTail({ c, df, loadings, sides: 'two' }).upper / p).toBeCloseTo(1, 8)
    }
  }
})

test('arms that are nearly one arm need hardly any adjustment', () => {
  const one = dunnettQuantile({ p: 0.05, df: 10, loadings: [0.7], sides: 'two' })
  const same = dunnettQuantile({ p: 0.05, df: 10, loadings: [0.999, 0.999, 0.999], sides: 'two' })
  expect(same).toBeGreaterThan(one)
  expect(same).toBeLessThan(one * 1.06)
})
