import { expect, test } from 'vitest'
import { Decimal } from '@/lib/calc/cost/decimal'
import { mustBeAmount } from '@/lib/calc/cost/must-be-amount'

test('an amount passes as it is, a loss only where it may be one', () => {
  expect(mustBeAmount('x', new Decimal('12.5')).toString()).toBe('12.5')
  expect(mustBeAmount('x', new Decimal(-3), null).toString()).toBe('-3')
  expect(() => mustBeAmount('x', new Decimal(-3))).toThrow(
    expect.objectContaining({ code: 'out-of-range', facts: expect.objectContaining({ field: 'x', min: 0 }) }),
  )
})

test('what is no number is refused', () =>
  expect(() => mustBeAmount('x', new Decimal(NaN), null)).toThrow(expect.objectContaining({ code: 'not-finite' })))
