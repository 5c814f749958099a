import { Decimal as Shared } from 'decimal.js'
import { expect, test } from 'vitest'
import { Decimal } from '@/lib/calc/cost/decimal'

test('settings elsewhere do not reach money', () => {
  const before = Shared.precision
  Shared.set({ precision: 3 })
  try {
    expect(new Decimal('1').dividedBy(3).toString()).toBe(`0.${'3'.repeat(40)}`)
  } finally {
    Shared.set({ precision: before })
  }
})
test('a tenth and two tenths are three tenths', () => expect(new Decimal('0.1').plus('0.2').toString()).toBe('0.3'))
