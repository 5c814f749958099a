import fc from 'fast-check'
import { expect, test } from 'vitest'
import { WATER_SPECIFIC_HEAT_J_PER_G_K } from '@/lib/calc/temperature/constants'
import { requiredWaterTemp } from '@/lib/calc/temperature/required-water-temp'
import { forLong } from '@/tests/support/long'

const flour = { massG: 1000, tempC: 22, specificHeatJPerGK: 1.9 }
const q = {
  doughTempC: 26,
  parts: [flour],
  bowl: null,
  waterMassG: 650,
  friction: { by: 'rise', riseC: 4 } as const,
  roomHeatJ: 0,
}

test('with the water found, heat given equals heat taken', () => {
  const temp = fc.double({ min: 0, max: 40, noNaN: true })
  const part = fc.record({
    massG: fc.double({ min: 0, max: 5000, noNaN: true }),
    tempC: temp,
    specificHeatJPerGK: fc.double({ min: 1, max: 4.2, noNaN: true }),
  })
  fc.assert(
    fc.property(
      fc.array(part, { maxLength: 8 }),
      temp,
      fc.double({ min: 0, max: 12, noNaN: true }),
      temp,
      (parts, doughTempC, riseC, bowlC) => {
        const bowl = { heatCapacityJPerK: 900, tempC: bowlC }
        const result = requiredWaterTemp({
          ...q,
          parts,
          doughTempC,
          bowl,
          friction: { by: 'rise', riseC },
          roomHeatJ: 500,
        })
        const waterJPerK = q.waterMassG * WATER_SPECIFIC_HEAT_J_PER_G_K
        const bodies = [
          ...parts.map((p) => [p.massG * p.specificHeatJPerGK, p.tempC] as const),
          [900, bowlC] as const,
          [waterJPerK, result.waterTempC] as const,
        ]
        const mixedC =
          (bodies.reduce((s, [c, t]) => s + c * t, 0) + result.frictionJ + 500) / bodies.reduce((s, [c]) => s + c, 0)
        expect(mixedC).toBeCloseTo(doughTempC, 8)
        expect(result.heatCapacityJPerK).toBeCloseTo(
          bodies.reduce((s, [c]) => s + c, 0),
          6,
        )
      },
    ),
    { seed: 1740, numRuns: forLong(200, 4_000) },
  )
})

test('friction as energy per kg and minute, speed by speed', () => {
  const slow = { joulePerKgMin: 400, minutes: 4 }
  const fast = { joulePerKgMin: 1200, minutes: 6 }
  const result = requiredWaterTemp({ ...q, friction: { by: 'energy', phases: [slow, fast] } })
  expect(result.frictionJ).toBeCloseTo((400 * 4 + 1200 * 6) * 1.65, 9)
})

test('a hot day asks for water below freezing and gets an answer', () => {
  const result = requiredWaterTemp({
    ...q,
    doughTempC: 24,
    parts: [{ ...flour, tempC: 34 }],
    friction: { by: 'rise', riseC: 16 },
  })
  expect(result.waterTempC).toBeLessThan(0)
})

test('no water to mix with is refused', () =>
  expect(() => requiredWaterTemp({ ...q, waterMassG: 0 })).toThrow(
    expect.objectContaining({ code: 'out-of-range', facts: expect.objectContaining({ field: 'waterMassG' }) }),
  ))
