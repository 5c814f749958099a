import { expect, test } from 'vitest'
import { mustBeDecimal } from '@/lib/calc/cost/must-be-decimal'

test('plain decimals are read exactly', () => expect(mustBeDecimal('x', '89.505').toString()).toBe('89.505'))
test('anything else is refused', () => {
  for (const text of ['', 'NaN', 'Infinity', '1e3', '1,5', '0x10', ' 1', '1.']) {
    expect(() => mustBeDecimal('x', text), text).toThrow(expect.objectContaining({ code: 'not-finite' }))
  }
  expect(() => mustBeDecimal('x', '-1')).toThrow(expect.objectContaining({ code: 'out-of-range' }))
})
