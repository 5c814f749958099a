import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { heatOfParts } from '@/lib/calc/temperature/heat-of-parts'

const flour = { massG: 1000, tempC: 20, specificHeatJPerGK: 1.8 }
const salt = { massG: 20, tempC: 22, specificHeatJPerGK: 0.9 }

describe('heat that ingredients and bowl take up', () => {
  it('is worked out by hand: 1000·1.8·6 + 20·0.9·4, and 900·5 for the bowl', () => {
    expect(heatOfParts({ doughTempC: 26, parts: [flour, salt], bowl: null })).toEqual({
      heatJ: 10_872,
      partsJPerK: 1818,
      partsMassG: 1020,
    })
    expect(
      heatOfParts({ doughTempC: 26, parts: [flour, salt], bowl: { heatCapacityJPerK: 900, tempC: 21 } }).heatJ,
    ).toBe(15_372)
  })

  it('is nothing when all are at that temperature, and turns its sign with the difference', () => {
    fc.assert(
      fc.property(fc.double({ min: -20, max: 20, noNaN: true }), (difference) => {
        const { heatJ } = heatOfParts({ doughTempC: 20 + difference, parts: [flour], bowl: null })
        expect(heatJ).toBeCloseTo(1800 * difference, 6)
      }),
      { seed: 21 },
    )
  })

  it('names the part at fault', () => {
    expect(() => heatOfParts({ doughTempC: 26, parts: [flour, { ...salt, massG: -1 }], bowl: null })).toThrow(
      'parts[1].massG',
    )
    expect(() =>
      heatOfParts({ doughTempC: 26, parts: [flour], bowl: { heatCapacityJPerK: 900, tempC: Number.NaN } }),
    ).toThrow('bowl.tempC')
  })
})
