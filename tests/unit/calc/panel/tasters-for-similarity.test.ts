import { expect, test } from 'vitest'
import { tastersForSimilarity } from '@/lib/calc/panel/tasters-for-similarity'

const asked = { test: 'duo-trio', marginShare: 0.3, confidence: 0.95, trueShare: 0, power: 0.8 } as const

test('a narrower margin, more confidence and some who can tell all take more tasters', () => {
  const { tasters } = tastersForSimilarity(asked)
  expect(tastersForSimilarity({ ...asked, marginShare: 0.2 }).tasters).toBeGreaterThan(tasters)
  expect(tastersForSimilarity({ ...asked, confidence: 0.99 }).tasters).toBeGreaterThan(tasters)
  expect(tastersForSimilarity({ ...asked, trueShare: 0.1 }).tasters).toBeGreaterThan(tasters)
})

test('a true share at the margin, or beyond, can never be shown to be below it', () => {
  expect(() => tastersForSimilarity({ ...asked, trueShare: 0.3 })).toThrow('trueShare')
  expect(() => tastersForSimilarity({ ...asked, trueShare: -0.1 })).toThrow('trueShare')
  expect(() => tastersForSimilarity({ ...asked, trueShare: 0.299 })).toThrow('too-many-tasters')
  expect(() => tastersForSimilarity({ ...asked, marginShare: 30 })).toThrow('marginShare')
})
