import fc from 'fast-check'
import { expect, test } from 'vitest'
import { atMoistureBasisPct, MOISTURE_BASES_PCT } from '@/lib/calc/formula/at-moisture-basis'
import { forLong } from '@/tests/support/long'

const moisture = fc.double({ min: 0, max: 30, noNaN: true })

test('restating there and back returns the figure', () => {
  fc.assert(
    fc.property(fc.double({ min: 0, max: 30, noNaN: true }), moisture, moisture, (valuePct, moisturePct, basisPct) => {
      const there = atMoistureBasisPct({ valuePct, moisturePct, basisPct })
      expect(atMoistureBasisPct({ valuePct: there, moisturePct: basisPct, basisPct: moisturePct })).toBeCloseTo(
        valuePct,
        9,
      )
    }),
    { seed: 1705, numRuns: forLong(200, 4_000) },
  )
})

test('the dry basis is zero', () => expect(MOISTURE_BASES_PCT.dry).toBe(0))
