import { expect, test } from 'vitest'
import { grubbsTest } from '@/lib/calc/analysis/grubbs-test'

test('a low outlier is found as well as a high one', () => {
  const values = [5.1, 4.9, 5, 5.05, 4.95, 5.02]
  expect(grubbsTest({ values: [...values, 2], alpha: 0.05 })).toMatchObject({ index: 6, outlier: true })
  expect(grubbsTest({ values: values.map((v) => -v), alpha: 0.05 }).outlier).toBe(false)
})

test('p and the critical value agree', () => {
  for (const far of [5.2, 5.4, 5.6, 5.8, 6]) {
    const got = grubbsTest({ values: [5.1, 4.9, 5, 5.2, 4.8, far], alpha: 0.05 })
    expect(got.p < 0.05).toBe(got.outlier)
  }
})

test('two values, and values all alike, are refused', () => {
  expect(() => grubbsTest({ values: [1, 2], alpha: 0.05 })).toThrow('empty')
  expect(() => grubbsTest({ values: [0.1, 0.1, 0.1], alpha: 0.05 })).toThrow('zero-variance')
})
