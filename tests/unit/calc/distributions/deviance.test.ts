import { expect, test } from 'vitest'
import { deviance } from '@/lib/calc/distributions/deviance'

test('the series and the plain form agree where they meet', () => {
  // |x − m| = 0.1 (x + m) at x = 11/9 m
  const m = 9
  expect(deviance({ x: 11 - 1e-9, m })).toBeCloseTo(deviance({ x: 11 + 1e-9, m }), 8)
})

test('close numbers keep their digits', () => {
  const [m, difference] = [1e8, 1]
  expect(deviance({ x: m + difference, m }) / (difference ** 2 / (2 * m))).toBeCloseTo(1, 7)
})
