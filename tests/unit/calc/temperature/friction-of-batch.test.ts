import fc from 'fast-check'
import { expect, test } from 'vitest'
import { frictionOfBatch } from '@/lib/calc/temperature/friction-of-batch'
import { requiredWaterTemp } from '@/lib/calc/temperature/required-water-temp'
import { forLong } from '@/tests/support/long'

test('the water that the learned friction asks for is the water that was used, by rise and by energy', () => {
  const temp = fc.double({ min: 1, max: 40, noNaN: true })
  fc.assert(
    fc.property(
      temp,
      temp,
      temp,
      fc.double({ min: 1, max: 30, noNaN: true }),
      (flourC, waterTempC, bowlC, mixingMinutes) => {
        const batch = {
          doughTempC: 45,
          parts: [{ massG: 1000, tempC: flourC, specificHeatJPerGK: 1.9 }],
          bowl: { heatCapacityJPerK: 800, tempC: bowlC },
          waterMassG: 640,
          roomHeatJ: -200,
        }
        const learned = frictionOfBatch({ ...batch, waterTempC, mixingMinutes })
        if (learned.riseC <= 40) {
          expect(
            requiredWaterTemp({ ...batch, friction: { by: 'rise', riseC: learned.riseC } }).waterTempC,
          ).toBeCloseTo(waterTempC, 8)
        }
        const phases = [{ joulePerKgMin: learned.joulePerKgMin, minutes: mixingMinutes }]
        expect(requiredWaterTemp({ ...batch, friction: { by: 'energy', phases } }).waterTempC).toBeCloseTo(
          waterTempC,
          8,
        )
      },
    ),
    { seed: 1742, numRuns: forLong(200, 4_000) },
  )
})

test('a dough colder than its parts shows as negative friction, not as none', () =>
  expect(
    frictionOfBatch({
      doughTempC: 18,
      parts: [{ massG: 1000, tempC: 22, specificHeatJPerGK: 1.9 }],
      bowl: null,
      waterMassG: 600,
      waterTempC: 22,
      roomHeatJ: 0,
      mixingMinutes: 8,
    }).frictionJ,
  ).toBeLessThan(0))
