import fc from 'fast-check'
import { expect, test } from 'vitest'
import { Decimal } from '@/lib/calc/cost/decimal'
import { sameVolumePrice } from '@/lib/calc/cost/same-volume-price'
import { forLong } from '@/tests/support/long'

type Asked = { ratio: number; controlRest: number; armRest: number; controlG: number; armG: number }
const priceOf = ({ ratio, controlRest, armRest, controlG, armG }: Asked) =>
  sameVolumePrice({
    volumeRatio: ratio,
    controlRestMinor: new Decimal(controlRest),
    armRestMinor: new Decimal(armRest),
    controlMassG: new Decimal(controlG),
    armMassG: new Decimal(armG),
  })
/** What a piece's worth of volume costs more than the control's at a price. */
const dearer = (q: Asked, perKgMinor: Decimal) =>
  new Decimal(q.armRest)
    .plus(perKgMinor.times(q.armG).dividedBy(1000))
    .minus(new Decimal(q.controlRest).plus(perKgMinor.times(q.controlG).dividedBy(1000)).times(q.ratio))
const malt = { ratio: 1.05, controlRest: 22, armRest: 22.3, controlG: 0, armG: 2 }

test('of an ingredient that the test dough alone holds: what the gain leaves, over its mass', () => {
  const found = priceOf(malt)
  expect(found).toMatchObject({ outcome: 'up-to' })
  expect('perKgMinor' in found ? found.perKgMinor.toFixed() : '').toBe('400')
})

test('of an ingredient that both hold it is the price of the whole of it, in both', () => {
  const found = priceOf({ ...malt, controlG: 1 })
  // 0.8 cents for 2 − 1.05 g.
  expect('perKgMinor' in found ? found.perKgMinor.toFixed(6) : '').toBe('842.105263')
})

test('a dough that gives no more volume and costs as much without it costs more even with it as a gift', () => {
  expect(priceOf({ ...malt, ratio: 1 })).toEqual({ outcome: 'never' })
  expect(priceOf({ ...malt, ratio: 0 })).toEqual({ outcome: 'never' })
})

test('a dough that holds less of it is no dearer from a price on, or at any', () => {
  const lowered = { ratio: 1, controlRest: 20, armRest: 21, controlG: 10, armG: 5 }
  const found = priceOf(lowered)
  expect(found).toMatchObject({ outcome: 'from' })
  expect('perKgMinor' in found ? found.perKgMinor.toFixed() : '').toBe('200')
  expect(priceOf({ ...lowered, armRest: 19 })).toEqual({ outcome: 'always' })
})

test('where a litre of both holds as much of it there is no such price', () => {
  expect(priceOf({ ratio: 1.25, controlRest: 20, armRest: 21, controlG: 8, armG: 10 })).toEqual({
    outcome: 'no-bearing',
  })
  expect(priceOf({ ratio: 1, controlRest: 20, armRest: 21, controlG: 0, armG: 0 })).toEqual({ outcome: 'no-bearing' })
})

test('at that price a litre costs the same, on its good side no more, on the other more; where there is none, the outcome holds at any', () => {
  const amount = fc.integer({ min: 0, max: 5000 }).map((hundredths) => hundredths / 100)
  const asked = fc.record({
    ratio: fc.integer({ min: 50, max: 200 }).map((pct) => pct / 100),
    controlRest: amount,
    armRest: amount,
    controlG: amount,
    armG: amount,
  })
  fc.assert(
    fc.property(asked, fc.integer({ min: 0, max: 100_000 }), (q, some) => {
      const found = priceOf(q)
      const at = (price: Decimal | number) => dearer(q, new Decimal(price))
      if ('perKgMinor' in found) {
        const { perKgMinor: price } = found
        expect(price.isNegative() && !price.isZero()).toBe(false)
        expect(at(price).abs().toNumber()).toBeLessThan(1e-25)
        expect(at(price.plus(1)).isPositive()).toBe(found.outcome === 'up-to')
      } else if (found.outcome === 'never') expect(at(some).isPositive()).toBe(true)
      else if (found.outcome === 'always') expect(at(some).lessThanOrEqualTo(0)).toBe(true)
      else expect(at(some).minus(at(0)).abs().toNumber()).toBeLessThan(1e-6)
    }),
    { seed: 1207, numRuns: forLong(500, 10_000) },
  )
})

test('a ratio, cost or mass below nothing, or that is no number, is refused by its name', () => {
  for (const [field, change] of Object.entries({
    volumeRatio: { ratio: -0.1 },
    controlRestMinor: { controlRest: -1 },
    armRestMinor: { armRest: Number.NaN },
    controlMassG: { controlG: -1 },
    armMassG: { armG: Number.POSITIVE_INFINITY },
  }))
    expect(() => priceOf({ ...malt, ...change })).toThrow(
      expect.objectContaining({ facts: expect.objectContaining({ field }) }),
    )
})
