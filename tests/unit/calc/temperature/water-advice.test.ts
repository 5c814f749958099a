import { expect, test } from 'vitest'
import { waterAdvice } from '@/lib/calc/temperature/water-advice'
import { answerOf } from '@/tests/support/answer-of'

const q = { waterMassG: 1000, tapTempC: 20 }

test('water that the tap can be warmed or mixed to needs no word and no ice', () => {
  expect(waterAdvice({ ...q, waterTempC: 45 })).toEqual({ iceMassG: 0, warnings: [] })
  expect(waterAdvice({ ...q, waterTempC: 20 })).toEqual({ iceMassG: 0, warnings: [] })
})

test.each([
  [45.1, 'too-hot-for-yeast'],
  [100.1, 'hotter-than-boiling'],
])('%d °C is said: %s', (waterTempC, warning) => {
  expect(waterAdvice({ ...q, waterTempC })).toEqual({ iceMassG: null, warnings: [warning] })
})

test('below freezing it says to use ice, of how much once tap and water are known, and when that is much', () => {
  expect(waterAdvice({ waterTempC: -5, waterMassG: null, tapTempC: 20 })).toEqual({
    iceMassG: null,
    warnings: ['use-ice'],
  })
  const { iceMassG, warnings } = waterAdvice({ ...q, waterTempC: -5 })
  // Heat balance, worked by hand: 1000 · 25 / (20 + 333.6/4.186).
  expect(iceMassG).toBeCloseTo((1000 * 25) / (20 + 333.6 / 4.186), 8)
  expect(warnings).toEqual(['use-ice'])
  expect(waterAdvice({ ...q, waterTempC: -40 }).warnings).toEqual(['use-ice', 'much-ice'])
  expect(waterAdvice({ ...q, waterTempC: -90 })).toEqual({ iceMassG: null, warnings: ['colder-than-all-ice'] })
})

test('both ways to a water temperature say so in their answer', () => {
  const byFactor = {
    temperaturesIn: 'celsius',
    wantedTemp: 24,
    roomTemp: 30,
    flourTemp: 30,
    frictionFactor: 20,
    waterMassG: 1000,
    tapTemp: 20,
  }
  expect(answerOf('temperature/water-temp-by-factor', byFactor)).toMatchObject({
    waterTempC: -8,
    waterTempF: 17.6,
    iceMassG: expect.closeTo(28_000 / (20 + 333.6 / 4.186), 8),
    warnings: ['use-ice'],
  })
  const byHeat = {
    doughTempC: 35,
    parts: [{ massG: 1000, tempC: 5, specificHeatJPerGK: 1.8 }],
    waterMassG: 600,
    roomHeatJ: 0,
    frictionBy: 'rise',
    riseC: 2,
  }
  expect(answerOf('temperature/required-water-temp', byHeat)).toMatchObject({ warnings: ['too-hot-for-yeast'] })
})
