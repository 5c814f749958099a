import { expect, it } from 'vitest'
import { Decimal } from '@/lib/calc/cost/decimal'
import { priceOnDay } from '@/lib/calc/cost/price-on-day'
import { asCostPrice } from '@/lib/kitchen/stores/as-cost-price'
import { pricePerKg } from '@/lib/kitchen/stores/price-per-kg'

it('the price of a kg comes out of the price of a pack, exactly', () => {
  expect(pricePerKg({ packPrice: '18.75', packMassG: 25_000 }).toFixed()).toBe('0.75')
  expect(pricePerKg({ packPrice: '10.05', packMassG: 1005 }).toFixed()).toBe('10')
  expect(pricePerKg({ packPrice: '0', packMassG: 1_000_000 }).toFixed()).toBe('0')
})

it('a price of the stores is taken by the costing in minor units, also where its digits never end', () => {
  const held = {
    priceId: 'p',
    ingredientId: 'i',
    holdsFrom: '2026-03-02',
    packMassG: 3000,
    packPrice: new Decimal(1),
    supplier: 'S',
  }
  const inEuro = asCostPrice({ ...held, currency: 'EUR', perKg: pricePerKg({ packPrice: '1', packMassG: 3000 }) })
  expect(inEuro).toEqual({ validFrom: '2026-03-02', perKgMinor: '33.333333333333', currency: 'EUR' })
  expect(priceOnDay({ prices: [inEuro], day: '2026-03-02' })).toEqual(inEuro)
})
