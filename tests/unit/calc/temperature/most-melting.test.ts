import { expect, test } from 'vitest'
import { ICE_CONSTANTS } from '@/lib/calc/temperature/ice-heat'
import { icedWaterTemp } from '@/lib/calc/temperature/iced-water-temp'
import { mostMeltingG } from '@/lib/calc/temperature/most-melting'

test('that much melts and brings the water to its melting point; a little more is left', () => {
  const q = { waterMassG: 1000, tapTempC: 18, iceTempC: -6, constants: ICE_CONSTANTS }
  const most = mostMeltingG(q)
  expect(icedWaterTemp({ ...q, iceMassG: most * (1 - 1e-9) })).toMatchObject({
    tempC: expect.closeTo(0, 6),
    iceLeftG: 0,
  })
  expect(icedWaterTemp({ ...q, iceMassG: most + 10 }).iceLeftG).toBeGreaterThan(9)
})

test('water at its melting point melts none', () =>
  expect(mostMeltingG({ waterMassG: 1000, tapTempC: 0, iceTempC: 0, constants: ICE_CONSTANTS })).toBe(0))
