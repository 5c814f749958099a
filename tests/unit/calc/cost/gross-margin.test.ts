import { expect, test } from 'vitest'
import { Decimal } from '@/lib/calc/cost/decimal'
import { grossMarginPct } from '@/lib/calc/cost/gross-margin'

test('below cost it is negative', () =>
  expect(grossMarginPct({ priceMinor: new Decimal(100), costMinor: new Decimal(120) }).toString()).toBe('-20'))
test('a price of nothing is refused', () =>
  expect(() => grossMarginPct({ priceMinor: new Decimal(0), costMinor: new Decimal(1) })).toThrow(
    expect.objectContaining({ code: 'out-of-range' }),
  ))
