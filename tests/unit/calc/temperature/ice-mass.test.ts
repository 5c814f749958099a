import fc from 'fast-check'
import { expect, test } from 'vitest'
import { ICE_CONSTANTS } from '@/lib/calc/temperature/ice-heat'
import { iceMassG } from '@/lib/calc/temperature/ice-mass'
import { icedWaterTemp } from '@/lib/calc/temperature/iced-water-temp'
import { forLong } from '@/tests/support/long'

test('water with the ice found comes to the wanted temperature, in both conventions', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 1, max: 60, noNaN: true }),
      fc.double({ min: 0, max: 1, noNaN: true }),
      fc.double({ min: -20, max: 0, noNaN: true }),
      fc.constantFrom('replacing' as const, 'adding' as const),
      (tapTempC, part, iceTempC, convention) => {
        const wantedTempC = tapTempC * part
        const iceG = iceMassG({
          waterMassG: 1000,
          tapTempC,
          wantedTempC,
          iceTempC,
          convention,
          constants: ICE_CONSTANTS,
        })
        const waterMassG = convention === 'replacing' ? 1000 - iceG : 1000
        const mixed = icedWaterTemp({ waterMassG, tapTempC, iceMassG: iceG, iceTempC, constants: ICE_CONSTANTS })
        expect(mixed.tempC).toBeCloseTo(wantedTempC, 8)
      },
    ),
    { seed: 1741, numRuns: forLong(300, 6_000) },
  )
})

test('below freezing is a normal input: more ice than melts at 0 °C', () => {
  const q = { waterMassG: 1000, tapTempC: 20, iceTempC: 0, convention: 'replacing', constants: ICE_CONSTANTS } as const
  expect(iceMassG({ ...q, wantedTempC: -10 })).toBeGreaterThan(iceMassG({ ...q, wantedTempC: 0 }))
})

test('ice does not warm water', () =>
  expect(() =>
    iceMassG({
      waterMassG: 1,
      tapTempC: 10,
      wantedTempC: 11,
      iceTempC: 0,
      convention: 'adding',
      constants: ICE_CONSTANTS,
    }),
  ).toThrow(
    expect.objectContaining({ code: 'out-of-range', facts: expect.objectContaining({ field: 'wantedTempC' }) }),
  ))

test('a wanted temperature that all water as ice cannot give is not possible', () => {
  const constants = { ...ICE_CONSTANTS, latentHeatJPerG: 100 }
  for (const convention of ['adding', 'replacing'] as const)
    expect(() =>
      iceMassG({ waterMassG: 1, tapTempC: 10, wantedTempC: -30, iceTempC: 0, convention, constants }),
    ).toThrow(expect.objectContaining({ code: 'not-possible' }))
})

test('ice added for water below freezing never melts in it: refused with the most that does', () => {
  const constants = { ...ICE_CONSTANTS, latentHeatJPerG: 80 * ICE_CONSTANTS.waterSpecificHeatJPerGK }
  expect(() =>
    iceMassG({ waterMassG: 8000, tapTempC: 20, wantedTempC: -50, iceTempC: 0, convention: 'adding', constants }),
  ).toThrow(
    expect.objectContaining({
      code: 'not-possible',
      facts: expect.objectContaining({ reason: 'never-melts', max: 2000 }),
    }),
  )
})

test('ice added never is more than melts, whatever is wanted of whatever tap', () => {
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 60, noNaN: true }),
      fc.double({ min: -60, max: 60, noNaN: true }),
      (tapTempC, wantedTempC) => {
        fc.pre(wantedTempC <= tapTempC)
        const q = { waterMassG: 1000, tapTempC, iceTempC: 0, constants: ICE_CONSTANTS }
        const most = (1000 * 4.186 * tapTempC) / 333.6
        try {
          expect(iceMassG({ ...q, wantedTempC, convention: 'adding' })).toBeLessThanOrEqual(most + 1e-9)
        } catch (error) {
          expect(error).toMatchObject({ facts: { reason: 'never-melts' } })
          expect(wantedTempC).toBeLessThan(0)
        }
      },
    ),
    { seed: 1742, numRuns: forLong(300, 6_000) },
  )
})
