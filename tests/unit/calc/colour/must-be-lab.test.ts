import { expect, test } from 'vitest'
import { mustBeLab } from '@/lib/calc/colour/must-be-lab'

test('a colour at the edges is handed back', () => {
  const white = { lightness: 100, a: -200, b: 200 }
  expect(mustBeLab('', white)).toBe(white)
})

test('what is no colour is refused at its field', () => {
  expect(() => mustBeLab('2', { lightness: 100.1, a: 0, b: 0 })).toThrow('lightness2')
  expect(() => mustBeLab('1', { lightness: 50, a: 201, b: 0 })).toThrow('a1')
  expect(() => mustBeLab('', { lightness: 50, a: 0, b: NaN })).toThrow('not-finite')
})
