import { expect, test } from 'vitest'
import { Decimal } from '@/lib/calc/cost/decimal'
import { usablePrice } from '@/lib/calc/cost/usable-price'

const plain = {
  packMassG: 12_000,
  pieces: null,
  freightMinor: new Decimal(0),
  freightMassG: 1000,
  preparedFromG: 1000,
  preparedToG: 1000,
  lossPct: 0,
}

test('without freight, trim and loss the price stays what it is', () => {
  const found = usablePrice({ ...plain, packMinor: new Decimal(2400) })
  expect(found.usablePerKgMinor.toFixed()).toBe('200')
  expect(found.usableYieldPct.toFixed()).toBe('100')
  expect(found.perPieceMinor).toBeNull()
})

test('half lost and half trimmed off is four times the price', () => {
  const found = usablePrice({ ...plain, packMinor: new Decimal(2400), preparedToG: 500, lossPct: 50, pieces: 24 })
  expect(found.usablePerKgMinor.toFixed()).toBe('800')
  expect(found.perPieceMinor?.toFixed()).toBe('200')
})

test('a third of a cent is not lost on the way', () => {
  expect(
    usablePrice({ ...plain, packMassG: 3000, packMinor: new Decimal(100) })
      .usablePerKgMinor.times(3)
      .toNumber(),
  ).toBe(100)
})

test('more ready than there was, half a piece, and a price below nothing, are refused at their field', () => {
  const q = { ...plain, packMinor: new Decimal(2400) }
  for (const [field, value] of [
    ['preparedToG', 1001],
    ['pieces', 2.5],
    ['lossPct', 100],
    ['packMinor', new Decimal(-1)],
  ] as const)
    expect(() => usablePrice({ ...q, [field]: value })).toThrow(
      expect.objectContaining({ facts: expect.objectContaining({ field }) }),
    )
})
