import { expect, test } from 'vitest'
import { shareOfEffect } from '@/lib/calc/panel/share-of-effect'

test('the three ways to state a difference lead to one share', () => {
  expect(shareOfEffect({ test: 'triangle', effectKind: 'correct-share', effect: 0.6 })).toBe(0.6)
  expect(shareOfEffect({ test: 'triangle', effectKind: 'discriminator-share', effect: 0.4 })).toBeCloseTo(0.6, 14)
  expect(shareOfEffect({ test: 'duo-trio', effectKind: 'discriminator-share', effect: 0.4 })).toBeCloseTo(0.7, 14)
  expect(shareOfEffect({ test: 'paired-two-sided', effectKind: 'd-prime', effect: 1 })).toBe(
    shareOfEffect({ test: 'paired', effectKind: 'd-prime', effect: 1 }),
  )
})

test('no difference, and one too large to be told from certainty, are refused', () => {
  for (const effect of [0, -1, 11, NaN])
    expect(() => shareOfEffect({ test: 'triangle', effectKind: 'd-prime', effect })).toThrow('effect')
  for (const effect of [1 / 3, 1, 60])
    expect(() => shareOfEffect({ test: 'triangle', effectKind: 'correct-share', effect })).toThrow('effect')
  for (const effect of [0, 1, 40])
    expect(() => shareOfEffect({ test: 'triangle', effectKind: 'discriminator-share', effect })).toThrow('effect')
})
