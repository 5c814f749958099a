import fc from 'fast-check'
import { expect, test } from 'vitest'
import { minutesAtTemperature } from '@/lib/calc/fermentation/minutes-at-temperature'

const temp = fc.double({ min: 9, max: 31, noNaN: true })

test('there and back is the same time by each rule, and the range holds them all', () =>
  fc.assert(
    fc.property(temp, temp, (tempC, otherTempC) => {
      const there = minutesAtTemperature({ minutes: 60, tempC, otherTempC })
      for (const { rule, minutes } of there.rules) {
        expect(minutes).toBeGreaterThanOrEqual(there.leastMin)
        expect(minutes).toBeLessThanOrEqual(there.mostMin)
        const back = minutesAtTemperature({ minutes, tempC: otherTempC, otherTempC: tempC }).rules.find(
          (one) => one.rule === rule,
        )
        expect(back?.minutes).toBeCloseTo(60, 8)
      }
    }),
  ))

test('a retarder is answered by a range with a word, never quietly', () => {
  const found = minutesAtTemperature({ minutes: 960, tempC: 4, otherTempC: 27 })
  expect(found.warnings).toContain('rules-differ-in-the-cold')
  expect(found.mostMin / found.leastMin).toBeGreaterThan(40)
})

test('temperatures at which no yeast works are refused', () => {
  for (const otherTempC of [2.8, 45.4])
    expect(() => minutesAtTemperature({ minutes: 60, tempC: 26, otherTempC })).toThrow(
      expect.objectContaining({ facts: expect.objectContaining({ field: 'otherTempC' }) }),
    )
})
