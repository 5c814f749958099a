import { expect, test } from 'vitest'
import { Decimal } from '@/lib/calc/cost/decimal'
import { roundToMinor } from '@/lib/calc/cost/round-to-minor'

test('a half goes away from zero, on both sides', () => {
  expect(roundToMinor(new Decimal('107.5'))).toBe(108)
  expect(roundToMinor(new Decimal('-107.5'))).toBe(-108)
  expect(roundToMinor(new Decimal('107.4999999999999999999'))).toBe(107)
})
test('no negative zero', () => expect(Object.is(roundToMinor(new Decimal('-0.2')), 0)).toBe(true))
test('what a double cannot hold is refused', () =>
  expect(() => roundToMinor(new Decimal('1e20'))).toThrow(expect.objectContaining({ code: 'out-of-range' })))
