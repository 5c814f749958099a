import { expect, test } from 'vitest'
import { saltFromSodiumG } from '@/lib/calc/label/salt-from-sodium'

test('400 mg of sodium are a gram of salt on the label', () => {
  expect(saltFromSodiumG({ sodiumMg: 400 })).toBe(1)
  expect(saltFromSodiumG({ sodiumMg: 0 })).toBe(0)
})

test('less than none and no number are refused', () => {
  expect(() => saltFromSodiumG({ sodiumMg: -1 })).toThrow(expect.objectContaining({ code: 'out-of-range' }))
  expect(() => saltFromSodiumG({ sodiumMg: Number.NaN })).toThrow(expect.objectContaining({ code: 'not-finite' }))
})
