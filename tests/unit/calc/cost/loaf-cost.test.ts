import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { Decimal } from '@/lib/calc/cost/decimal'
import { loafCostMinor } from '@/lib/calc/cost/loaf-cost'

const q = { totalMinor: new Decimal('166.34'), doughMassG: 1600, scalingMassG: 400, doughLossPct: 0 }

describe('what a loaf costs', () => {
  test('is its share of the dough by mass, with what is lost', () => {
    // By hand: 166.34 / 4; of 1,600 g a tenth lost leaves 1,440 g, which is 3.6 pieces.
    expect(loafCostMinor(q).toString()).toBe('41.585')
    expect(loafCostMinor({ ...q, doughLossPct: 10 }).toFixed(10)).toBe(
      new Decimal('166.34').dividedBy('3.6').toFixed(10),
    )
  })

  test('does not move with the size of the dough, and follows the scaling mass', () =>
    fc.assert(
      fc.property(
        fc.double({ min: 0.01, max: 100, noNaN: true }),
        fc.double({ min: 0.1, max: 10, noNaN: true }),
        fc.double({ min: 0, max: 50, noNaN: true }),
        (times, scale, doughLossPct) => {
          const one = loafCostMinor({ ...q, doughLossPct })
          const larger = loafCostMinor({
            ...q,
            doughLossPct,
            totalMinor: q.totalMinor.times(times),
            doughMassG: q.doughMassG * times,
          })
          expect(larger.minus(one).abs().dividedBy(one).toNumber()).toBeLessThan(1e-12)
          const heavier = loafCostMinor({ ...q, doughLossPct, scalingMassG: q.scalingMassG * scale })
          expect(heavier.dividedBy(one).toNumber()).toBeCloseTo(scale, 10)
        },
      ),
    ))

  test.each([
    ['totalMinor', new Decimal(-1)],
    ['doughMassG', 0],
    ['scalingMassG', 0],
    ['doughLossPct', 100],
    ['doughLossPct', -1],
  ])('is not said of %s %s', (field, value) =>
    expect(() => loafCostMinor({ ...q, [field]: value })).toThrow(
      expect.objectContaining({ code: 'out-of-range', facts: expect.objectContaining({ field }) }),
    ),
  )
})
