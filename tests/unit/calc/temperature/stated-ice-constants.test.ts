import { expect, test } from 'vitest'
import { ICE_CONSTANTS } from '@/lib/calc/temperature/ice-heat'
import { statedIceConstants } from '@/lib/calc/temperature/stated-ice-constants'

test('what is not given is ours', () => {
  expect(statedIceConstants({})).toEqual(ICE_CONSTANTS)
  expect(statedIceConstants({ latentHeatJPerG: 334 })).toEqual({ ...ICE_CONSTANTS, latentHeatJPerG: 334 })
})

test.each([
  ['latentHeatJPerG', 80],
  ['latentHeatJPerG', 144],
  ['waterSpecificHeatJPerGK', 1],
  ['iceSpecificHeatJPerGK', 0.5],
])('%s of %d is in another unit', (field, value) =>
  expect(() => statedIceConstants({ [field]: value })).toThrow(
    expect.objectContaining({ code: 'out-of-range', facts: expect.objectContaining({ field }) }),
  ),
)
