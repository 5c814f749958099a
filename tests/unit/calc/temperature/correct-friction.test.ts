import { expect, test } from 'vitest'
import { correctFrictionJPerKg } from '@/lib/calc/temperature/correct-friction'
import { requiredWaterTemp } from '@/lib/calc/temperature/required-water-temp'

const dough = {
  parts: [{ massG: 1000, tempC: 22, specificHeatJPerGK: 1.9 }],
  bowl: null,
  waterMassG: 650,
  roomHeatJ: 0,
}
const waterFor = (frictionJPerKg: number) =>
  requiredWaterTemp({
    ...dough,
    doughTempC: 26,
    friction: { by: 'energy', phases: [{ joulePerKgMin: frictionJPerKg, minutes: 1 }] },
  })

test('a first dough two degrees too warm gives the friction that it really had', () => {
  const really = 9000
  const used = 6000
  const { waterTempC, heatCapacityJPerK } = waterFor(used)
  const actualDoughTempC = 26 + (1.65 * (really - used)) / heatCapacityJPerK
  const corrected = correctFrictionJPerKg({
    usedFrictionJPerKg: used,
    heatCapacityJPerK,
    doughMassG: 1650,
    wantedDoughTempC: 26,
    actualDoughTempC,
  })
  expect(corrected).toBeCloseTo(really, 8)
  expect(waterFor(corrected).waterTempC).toBeLessThan(waterTempC)
})

test('a first dough as wanted corrects nothing', () =>
  expect(
    correctFrictionJPerKg({
      usedFrictionJPerKg: 5000,
      heatCapacityJPerK: 4000,
      doughMassG: 1650,
      wantedDoughTempC: 26,
      actualDoughTempC: 26,
    }),
  ).toBe(5000))

test('no dough and a temperature of none are refused', () => {
  const q = {
    usedFrictionJPerKg: 5000,
    heatCapacityJPerK: 4000,
    doughMassG: 1650,
    wantedDoughTempC: 26,
    actualDoughTempC: 26,
  }
  expect(() => correctFrictionJPerKg({ ...q, doughMassG: 0 })).toThrow(
    expect.objectContaining({ code: 'out-of-range' }),
  )
  expect(() => correctFrictionJPerKg({ ...q, actualDoughTempC: 78 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'actualDoughTempC' }) }),
  )
  expect(() => correctFrictionJPerKg({ ...q, usedFrictionJPerKg: Number.NaN })).toThrow(
    expect.objectContaining({ code: 'not-finite' }),
  )
})
