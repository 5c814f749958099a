import { expect, test } from 'vitest'
import { binomialTail } from '@/lib/calc/distributions/binomial-tail'
import { mostCorrect } from '@/lib/calc/panel/most-correct'

test('that many are rare enough at the margin, and one more are not', () => {
  for (const tasters of [12, 31, 60, 144]) {
    const most = mostCorrect({ test: 'triangle', tasters, marginShare: 0.3, confidence: 0.95 })!
    const chance = (k: number) => binomialTail({ k, n: tasters, share: 1 / 3 + 0.2, tail: 'lower' })
    expect(chance(most)).toBeLessThanOrEqual(0.05)
    expect(chance(most + 1)).toBeGreaterThan(0.05)
  }
})

test('a wider margin and less confidence allow no fewer', () => {
  const base = { test: 'duo-trio', tasters: 60, marginShare: 0.3, confidence: 0.95 } as const
  expect(mostCorrect({ ...base, marginShare: 0.4 })!).toBeGreaterThanOrEqual(mostCorrect(base)!)
  expect(mostCorrect({ ...base, confidence: 0.8 })!).toBeGreaterThanOrEqual(mostCorrect(base)!)
})

test('with few tasters not even none right shows similarity', () => {
  expect(mostCorrect({ test: 'triangle', tasters: 2, marginShare: 0.2, confidence: 0.95 })).toBeNull()
})

test('bad input is refused', () => {
  const base = { test: 'triangle', tasters: 60, marginShare: 0.3, confidence: 0.95 } as const
  expect(() => mostCorrect({ ...base, tasters: 0 })).toThrow('tasters')
  expect(() => mostCorrect({ ...base, marginShare: 1 })).toThrow('marginShare')
  expect(() => mostCorrect({ ...base, confidence: NaN })).toThrow('not-finite')
})
