import fc from 'fast-check'
import { expect, test } from 'vitest'
import { Decimal } from '@/lib/calc/cost/decimal'
import { leastOrder } from '@/lib/calc/cost/least-order'

const q = { leastOrderG: 25_000, useGPerWeek: 200, bestBeforeWeeks: 52, perKgMinor: new Decimal(600) }

test('of a sack that lasts longer than it keeps, the rest is thrown away and the used part pays for it', () => {
  const order = leastOrder(q)
  expect(order.usedOfOrderG).toBe(10_400)
  expect(order.thrownAwayShare).toBeCloseTo(0.584, 12)
  expect(order.perUsedKgMinor.toNumber()).toBeCloseTo((600 * 25) / 10.4, 8)
  expect(order.thrownAwayPerYearMinor.toNumber()).toBeCloseTo(14.6 * 600 * (52.1775 / 52), 6)
})

test('of a sack that is used up in time nothing is thrown away, and a kg costs what it costs', () => {
  const order = leastOrder({ ...q, useGPerWeek: 5000 })
  expect(order).toMatchObject({ thrownAwayOfOrderG: 0, weeksOneOrderLasts: 5 })
  expect(order.perUsedKgMinor.toNumber()).toBe(600)
  expect(order.thrownAwayPerYearMinor.toNumber()).toBe(0)
})

test('what is paid in a year is what is used at its own price and what is thrown away', () =>
  fc.assert(
    fc.property(
      fc.double({ min: 100, max: 50_000, noNaN: true }),
      fc.double({ min: 1, max: 5000, noNaN: true }),
      fc.double({ min: 1, max: 150, noNaN: true }),
      (leastOrderG, useGPerWeek, bestBeforeWeeks) => {
        const order = leastOrder({ ...q, leastOrderG, useGPerWeek, bestBeforeWeeks })
        const paid = order.ordersPerYear * leastOrderG * 0.6
        const used = order.ordersPerYear * order.usedOfOrderG * 0.6
        expect((used + order.thrownAwayPerYearMinor.toNumber()) / paid).toBeCloseTo(1, 9)
        expect((order.perUsedKgMinor.toNumber() * order.ordersPerYear * order.usedOfOrderG) / 1000 / paid).toBeCloseTo(
          1,
          9,
        )
      },
    ),
  ))

test('nothing used, nothing kept and no order are refused', () => {
  for (const field of ['leastOrderG', 'useGPerWeek', 'bestBeforeWeeks'] as const) {
    expect(() => leastOrder({ ...q, [field]: 0 })).toThrow(
      expect.objectContaining({ code: 'out-of-range', facts: expect.objectContaining({ field }) }),
    )
  }
})
