import { expect, test } from 'vitest'
import { ICE_CONSTANTS, iceHeatJPerG } from '@/lib/calc/temperature/ice-heat'

test('warming, melting and warming on add up', () => {
  expect(iceHeatJPerG({ iceTempC: 0, finalTempC: 0, constants: ICE_CONSTANTS })).toBe(333.6)
  expect(iceHeatJPerG({ iceTempC: -10, finalTempC: 5, constants: ICE_CONSTANTS })).toBeCloseTo(
    20.623 + 333.6 + 20.93,
    10,
  )
})
test('ice above 0 °C is refused', () =>
  expect(() => iceHeatJPerG({ iceTempC: 1, finalTempC: 5, constants: ICE_CONSTANTS })).toThrow(
    expect.objectContaining({ code: 'out-of-range' }),
  ))
