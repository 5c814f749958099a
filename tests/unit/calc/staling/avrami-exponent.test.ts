import { expect, test } from 'vitest'
import { avramiExponent } from '@/lib/calc/staling/avrami-exponent'
import { firmnessAt } from '@/lib/calc/staling/firmness-at'

const q = { startFirmness: 2, endFirmness: 10, firstDays: 1.5, firstFirmness: 4, secondDays: 5, secondFirmness: 8 }

test('the curve goes through both readings, and through half at its half-life', () => {
  const { halfLifeDays, ...curve } = avramiExponent(q)
  const at = (days: number) => firmnessAt({ startFirmness: 2, endFirmness: 10, ...curve, days })
  expect(at(1.5)).toBeCloseTo(4, 10)
  expect(at(5)).toBeCloseTo(8, 10)
  expect(at(halfLifeDays)).toBeCloseTo(6, 10)
})

test('readings out of order, or beyond start and end, are refused', () => {
  for (const [field, value] of [
    ['secondDays', 1.5],
    ['firstFirmness', 2],
    ['secondFirmness', 10],
    ['secondFirmness', 4],
  ] as const)
    expect(() => avramiExponent({ ...q, [field]: value })).toThrow(
      expect.objectContaining({ facts: expect.objectContaining({ field }) }),
    )
})

test('an exponent that no bread has is refused', () => {
  expect(() => avramiExponent({ ...q, firstFirmness: 7.99, secondDays: 50 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ reason: 'no-such-exponent' }) }),
  )
})
