import { expect, test } from 'vitest'
import { ICE_CONSTANTS } from '@/lib/calc/temperature/ice-heat'
import { icedWaterTemp } from '@/lib/calc/temperature/iced-water-temp'

test('ice that does not all melt leaves the water at 0 °C and says how much is left', () => {
  const result = icedWaterTemp({ waterMassG: 500, tapTempC: 10, iceMassG: 500, iceTempC: 0, constants: ICE_CONSTANTS })
  expect(result.tempC).toBe(0)
  expect(result.iceLeftG).toBeCloseTo(500 - (500 * 4.186 * 10) / 333.6, 9)
})
test('ice so cold that water would freeze is refused', () =>
  expect(() =>
    icedWaterTemp({ waterMassG: 10, tapTempC: 1, iceMassG: 900, iceTempC: -20, constants: ICE_CONSTANTS }),
  ).toThrow(expect.objectContaining({ code: 'not-possible', facts: expect.objectContaining({ reason: 'freezes' }) })))
test('more ice than water never melts, and the most that does is said', () =>
  expect(() =>
    icedWaterTemp({
      waterMassG: 8000,
      tapTempC: 20,
      iceMassG: 19_000,
      iceTempC: 0,
      constants: { ...ICE_CONSTANTS, latentHeatJPerG: 80 * ICE_CONSTANTS.waterSpecificHeatJPerGK },
    }),
  ).toThrow(
    expect.objectContaining({
      code: 'not-possible',
      facts: expect.objectContaining({ field: 'iceMassG', reason: 'never-melts', max: 2000 }),
    }),
  ))
