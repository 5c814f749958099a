import { expect, it } from 'vitest'
import { unitPrice } from '@/lib/ui/unit-price'

it('a price per kg stays one, and becomes one per lb by the exact pound (NIST Handbook 44, Appendix C)', () => {
  expect(unitPrice('0.75', { locale: 'en-GB', currency: 'EUR', massUnits: 'metric' })).toBe('€0.75')
  // 100 per kg × 0.453 592 37 kg per lb.
  expect(unitPrice('100', { locale: 'en-US', currency: 'USD', massUnits: 'ounces', mostDigits: 6 })).toBe('$45.359237')
})

it('a small price does not look like nothing', () => {
  expect(unitPrice('0.0032', { locale: 'en-GB', currency: 'EUR', massUnits: 'metric' })).toBe('€0.0032')
  expect(unitPrice('0', { locale: 'en-GB', currency: 'EUR', massUnits: 'metric' })).toBe('€0.00')
})
