import fc from 'fast-check'
import { expect, test } from 'vitest'
import { servingOrders } from '@/lib/calc/panel/serving-orders'
import { squareCounts } from '../../../support/square-counts'

const samplesOf = (count: number) =>
  Array.from({ length: count }, (_, i) => i).flatMap((i) =>
    ['1', '2'].map((batch) => ({ sample: `s${i}`, batch, allergens: 'wheat' })),
  )

/** Rows of tasters with the number of the sample in each place. */
function rowsOf(count: number, tasters: number, seed: string): number[][] {
  const { servings } = servingOrders({ seed, samples: samplesOf(count), tasters })
  return Array.from({ length: tasters }, (_, i) =>
    servings.filter(({ taster }) => taster === i + 1).map(({ sample }) => Number(sample.slice(1))),
  )
}

test('in whole rounds each sample is equally often in each place and after each other one', () => {
  fc.assert(
    fc.property(fc.integer({ min: 2, max: 8 }), fc.integer({ min: 1, max: 3 }), fc.string(), (count, rounds, seed) => {
      const times = rounds * (count % 2 === 0 ? 1 : 2)
      const rows = rowsOf(count, times * count, seed)
      expect(squareCounts(rows)).toMatchObject({ inRow: [1], inColumn: [times], after: [times] })
    }),
  )
})

test('a round that is not whole is named', () => {
  expect(servingOrders({ seed: 's', samples: samplesOf(3), tasters: 3 }).warnings).toEqual([
    { code: 'orders-not-even', sample: null },
  ])
})

test('one sample, none, and more than a person can taste are refused', () => {
  expect(() => servingOrders({ seed: 's', samples: samplesOf(1), tasters: 4 })).toThrow('number-of-samples')
  expect(() => servingOrders({ seed: 's', samples: [], tasters: 4 })).toThrow('number-of-samples')
  expect(() => servingOrders({ seed: 's', samples: samplesOf(13), tasters: 4 })).toThrow('number-of-samples')
  expect(() => servingOrders({ seed: 's', samples: samplesOf(4), tasters: 10_000 })).toThrow('tasters')
})
