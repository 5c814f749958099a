import fc from 'fast-check'
import { expect, test } from 'vitest'
import { batchCost } from '@/lib/calc/cost/batch-cost'
import type { Price } from '@/lib/calc/cost/price-on-day'
import { forLong } from '@/tests/support/long'

const at = (perKgMinor: string, currency = 'EUR'): Price[] => [{ validFrom: '2026-01-01', perKgMinor, currency }]
const line = (name: string, massG: number, prices: Price[]) => ({ lineId: name, name, massG, prices })

test('sums are exact where binary would drift', () => {
  const cost = batchCost({
    lines: Array.from({ length: 10 }, (_, i) => line(`l${i}`, 100, at('1'))),
    day: '2026-05-01',
  })
  expect(cost.totalMinor.toString()).toBe('1')
  expect(batchCost({ lines: [line('yeast', 0.3, at('0.1'))], day: '2026-05-01' }).totalMinor.toString()).toBe('0.00003')
})
test('it says which price it used', () =>
  expect(batchCost({ lines: [line('flour', 1000, at('89.5'))], day: '2026-05-01' })).toMatchObject({
    day: '2026-05-01',
    currency: 'EUR',
    lines: [{ lineId: 'flour', validFrom: '2026-01-01' }],
  }))
test('a line without a price is refused by name, and is never free', () => {
  for (const massG of [5, 0])
    expect(() =>
      batchCost({ lines: [line('flour', 1000, at('90')), line('rare malt', massG, [])], day: '2026-05-01' }),
    ).toThrow(
      expect.objectContaining({
        code: 'not-possible',
        facts: { field: 'lines[1].prices', value: 'rare malt', reason: 'no-price-on-day' },
      }),
    )
})
test('tap water at a price of 0 is free', () =>
  expect(batchCost({ lines: [line('water', 650, at('0'))], day: '2026-05-01' }).totalMinor.toString()).toBe('0'))
test('two currencies are not added', () =>
  expect(() => batchCost({ lines: [line('a', 1, at('1')), line('b', 1, at('1', 'CHF'))], day: '2026-05-01' })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ value: 'b', reason: 'mixed-currencies' }) }),
  ))
test('the total is the sum of the lines to the last digit, in any order', () => {
  const one = fc.record({
    massG: fc.integer({ min: 0, max: 1e7 }).map((n) => n / 1000),
    price: fc.integer({ min: 0, max: 1e7 }).map((n) => (n / 100).toFixed(2)),
  })
  fc.assert(
    fc.property(fc.array(one, { minLength: 1, maxLength: 40 }), (rows) => {
      const lines = rows.map((r, i) => line(`l${i}`, r.massG, at(r.price)))
      const forward = batchCost({ lines, day: '2026-05-01' })
      const backward = batchCost({ lines: [...lines].reverse(), day: '2026-05-01' })
      expect(forward.totalMinor.equals(backward.totalMinor)).toBe(true)
      // The same in whole numbers: thousandths of g times hundredths of minor units.
      const whole = rows.reduce(
        (sum, r) => sum + BigInt(Math.round(r.massG * 1000)) * BigInt(Math.round(Number(r.price) * 100)),
        0n,
      )
      expect(forward.totalMinor.times(1e8).toFixed(0)).toBe(whole.toString())
    }),
    { seed: 1760, numRuns: forLong(200, 4_000) },
  )
})
