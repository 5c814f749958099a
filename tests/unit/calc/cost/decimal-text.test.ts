import { expect, test } from 'vitest'
import { Decimal } from '@/lib/calc/cost/decimal'
import { decimalText } from '@/lib/calc/cost/decimal-text'
import { mustBeDecimal } from '@/lib/calc/cost/must-be-decimal'

test.each([
  ['107.71875', '107.71875'],
  ['-3', '-3'],
  ['0', '0'],
  ['1e21', '1000000000000000000000'],
  ['0.0000001', '0.0000001'],
])('%s is written plainly', (value, text) => expect(decimalText(new Decimal(value))).toBe(text))

test('a third can be read again', () => {
  const text = decimalText(new Decimal(1).dividedBy(3))
  expect(text).toBe('0.333333333333')
  expect(mustBeDecimal('x', text).toFixed()).toBe(text)
})
