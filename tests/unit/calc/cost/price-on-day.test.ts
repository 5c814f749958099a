import { expect, test } from 'vitest'
import { priceOnDay } from '@/lib/calc/cost/price-on-day'

const price = (validFrom: string, perKgMinor: string) => ({ validFrom, perKgMinor, currency: 'EUR' })
const prices = [price('2026-03-01', '95'), price('2026-01-01', '90'), price('2026-06-01', '99.5')]
const on = (day: string) => priceOnDay({ prices, day })?.perKgMinor ?? null

test('a price holds from its first day until the next one begins', () => {
  expect(on('2026-02-28')).toBe('90')
  expect(on('2026-03-01')).toBe('95')
  expect(on('2030-01-01')).toBe('99.5')
})
test('before the first there is none', () => expect(on('2025-12-31')).toBeNull())
test('two prices from one day are refused', () =>
  expect(() => priceOnDay({ prices: [price('2026-01-01', '1'), price('2026-01-01', '2')], day: '2026-01-01' })).toThrow(
    expect.objectContaining({ code: 'duplicate' }),
  ))
