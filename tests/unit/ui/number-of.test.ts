import { describe, expect, it } from 'vitest'
import { decimalTextOf } from '@/lib/ui/decimal-text-of'
import { massOf } from '@/lib/ui/mass-of'
import { numberOf } from '@/lib/ui/number-of'

function typed(value: string): FormData {
  const form = new FormData()
  form.set('n', value)
  return form
}

describe('a number typed in a form', () => {
  it.each([
    ['12', 12],
    [' 0.5 ', 0.5],
    ['.5', 0.5],
    ['-3', -3],
    ['\u22123.25', -3.25],
    ['007', 7],
  ])('%s is read', (value, number) => expect(numberOf(typed(value), 'n', 'en-GB')).toBe(number))
  it.each(['1,250', '12,5', '1 250', '1.2.3', '5.', '.', '-', '1e3', 'Infinity', '0x1f', 'some'])(
    '%s is left as it is, to be refused at its field',
    (value) => expect(numberOf(typed(value), 'n', 'en-GB')).toBe(value.trim()),
  )
  it('is nothing when the field is empty or not there', () => {
    expect(numberOf(typed('  '), 'n', 'en-GB')).toBeUndefined()
    expect(numberOf(new FormData(), 'n', 'en-GB')).toBeUndefined()
  })
  it('has the decimal mark of the locale', () => {
    expect(numberOf(typed('12,5'), 'n', 'de-DE')).toBe(12.5)
    expect(numberOf(typed('12.5'), 'n', 'de-DE')).toBe('12.5')
  })
})

it('an amount keeps every digit that was typed', () => {
  expect(decimalTextOf(typed('18.70'), 'n', 'en-GB')).toBe('18.70')
  expect(decimalTextOf(typed('9007199254740993.01'), 'n', 'en-GB')).toBe('9007199254740993.01')
})

it('a mass is in grams, whatever unit stood beside its field', () => {
  expect(massOf(typed('1.005'), 'n', 'en-GB', 'kg')).toBe(1005)
  expect(massOf(typed('1'), 'n', 'en-US', 'oz')).toBe(28.349523125)
  expect(massOf(typed('a sack'), 'n', 'en-US', 'lb')).toBe('a sack')
})
