import fc from 'fast-check'
import { expect, test } from 'vitest'
import { correctForMoisture } from '@/lib/calc/formula/correct-for-moisture'
import { forLong } from '@/tests/support/long'

const moisture = fc.double({ min: 0, max: 30, noNaN: true })

test('corrected flour and water hold the dry matter and the dough mass', () => {
  fc.assert(
    fc.property(
      moisture,
      moisture,
      fc.double({ min: 0, max: 900, noNaN: true }),
      (moisturePct, basisPct, waterMassG) => {
        const result = correctForMoisture({ flourMassG: 1000, waterMassG, moisturePct, basisPct })
        expect(result.flourMassG + result.waterMassG).toBeCloseTo(1000 + waterMassG, 8)
        expect(result.flourMassG * (100 - moisturePct)).toBeCloseTo(1000 * (100 - basisPct), 6)
        expect(result.possible).toBe(result.waterMassG >= 0)
      },
    ),
    { seed: 1706, numRuns: forLong(200, 4_000) },
  )
})

test('a flour wetter than the dough can bear is said to be impossible', () => {
  expect(correctForMoisture({ flourMassG: 1000, waterMassG: 10, moisturePct: 20, basisPct: 14 }).possible).toBe(false)
})
