import { expect, test } from 'vitest'
import { threeDigitCodes } from '@/lib/calc/plan/three-digit-codes'

test('codes have three digits, none comes twice, all 900 can be had', () => {
  const codes = threeDigitCodes({ seed: 'x', count: 900 })
  expect(new Set(codes).size).toBe(900)
  expect(codes.every((code) => /^[1-9]\d\d$/.test(code))).toBe(true)
})

test('the seed decides, and asking for more keeps the first ones', () => {
  expect(threeDigitCodes({ seed: 'x', count: 5 })).toEqual(threeDigitCodes({ seed: 'x', count: 9 }).slice(0, 5))
  expect(threeDigitCodes({ seed: 'x', count: 5 })).not.toEqual(threeDigitCodes({ seed: 'y', count: 5 }))
})

test('more codes than there are, and part of a code, are refused', () => {
  expect(() => threeDigitCodes({ seed: 'x', count: 901 })).toThrow('out-of-range')
  expect(() => threeDigitCodes({ seed: 'x', count: 1.5 })).toThrow('not-whole')
})
