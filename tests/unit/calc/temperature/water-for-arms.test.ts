import { ICE_CONSTANTS } from '@/lib/calc/temperature/ice-heat'
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { requiredWaterTemp } from '@/lib/calc/temperature/required-water-temp'
import { waterForArms } from '@/lib/calc/temperature/water-for-arms'

const q = {
  wantedDoughTempC: 26,
  frictionJPerKg: 8000,
  arms: [
    { arm: 'control', waterMassG: 6500, restMassG: 10_300, restTempC: 21, restSpecificHeatJPerGK: 1.9 },
    { arm: 'B', waterMassG: 5900, restMassG: 10_900, restTempC: 21, restSpecificHeatJPerGK: 2.05 },
  ],
  coldTempC: 14,
  hotTempC: 55,
  mostTempC: 40,
  iceTempC: 0,
  constants: ICE_CONSTANTS,
  mostIceShare: 0.4,
}

test('each arm gets the water that the heat balance of its own dough asks for', () => {
  const { arms, canAll, commonDoughTempC } = waterForArms(q)
  q.arms.forEach((one, i) => {
    const { waterTempC } = requiredWaterTemp({
      doughTempC: 26,
      parts: [{ massG: one.restMassG, tempC: one.restTempC, specificHeatJPerGK: one.restSpecificHeatJPerGK }],
      bowl: null,
      waterMassG: one.waterMassG,
      friction: { by: 'energy', phases: [{ joulePerKgMin: 8000, minutes: 1 }] },
      roomHeatJ: 0,
    })
    expect(arms[i]!.waterTempC).toBeCloseTo(waterTempC, 9)
  })
  expect(canAll).toBe(true)
  expect(commonDoughTempC).toBe(26)
})

test('when not all can come out as wanted, all can at the common temperature', () =>
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 45, noNaN: true }),
      fc.double({ min: 0, max: 40_000, noNaN: true }),
      fc.double({ min: 0, max: 0.6, noNaN: true }),
      fc.double({ min: 5, max: 35, noNaN: true }),
      (wantedDoughTempC, frictionJPerKg, mostIceShare, restTempC) => {
        const asked = {
          ...q,
          wantedDoughTempC,
          frictionJPerKg,
          mostIceShare,
          arms: [q.arms[0]!, { ...q.arms[1]!, restTempC }],
        }
        const { canAll, commonDoughTempC } = waterForArms(asked)
        fc.pre(commonDoughTempC !== null && commonDoughTempC >= -5 && commonDoughTempC <= 60)
        if (canAll) expect(commonDoughTempC).toBeCloseTo(wantedDoughTempC, 9)
        else {
          // A hair inside, where the common temperature is an end of what can be had.
          const inward = commonDoughTempC < wantedDoughTempC ? -1e-7 : 1e-7
          expect(waterForArms({ ...asked, wantedDoughTempC: commonDoughTempC + inward }).canAll).toBe(true)
        }
      },
    ),
  ))

test('doughs that no water brings together have no common temperature', () => {
  const hot = { arm: 'scald', waterMassG: 500, restMassG: 16_000, restTempC: 90, restSpecificHeatJPerGK: 3.5 }
  expect(waterForArms({ ...q, arms: [q.arms[0]!, hot] })).toMatchObject({ canAll: false, commonDoughTempC: null })
})

test('no arm, one name twice and a dough without water are refused', () => {
  expect(() => waterForArms({ ...q, arms: [] })).toThrow(expect.objectContaining({ code: 'empty' }))
  expect(() => waterForArms({ ...q, arms: [q.arms[0]!, q.arms[0]!] })).toThrow(
    expect.objectContaining({ code: 'duplicate' }),
  )
  expect(() => waterForArms({ ...q, arms: [{ ...q.arms[0]!, waterMassG: 0 }] })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'arms[0].waterMassG' }) }),
  )
  expect(() => waterForArms({ ...q, frictionJPerKg: Number.NaN })).toThrow(
    expect.objectContaining({ code: 'not-finite' }),
  )
  expect(() => waterForArms({ ...q, iceTempC: Number.NaN })).toThrow(expect.objectContaining({ code: 'not-finite' }))
})
