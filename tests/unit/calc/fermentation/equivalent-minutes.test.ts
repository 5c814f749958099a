import fc from 'fast-check'
import { expect, test } from 'vitest'
import { equivalentMinutes } from '@/lib/calc/fermentation/equivalent-minutes'
import { minutesAtTemperature } from '@/lib/calc/fermentation/minutes-at-temperature'

const steady = (doughTempC: number, minutes: number) => [
  { atMin: 10, doughTempC },
  { atMin: 10 + minutes, doughTempC },
]

test('a dough at the reference temperature ferments its own minutes, by every rule', () =>
  fc.assert(
    fc.property(
      fc.double({ min: 5, max: 44, noNaN: true }),
      fc.double({ min: 1, max: 900, noNaN: true }),
      (tempC, minutes) => {
        const result = equivalentMinutes({ readings: steady(tempC, minutes), referenceTempC: tempC })
        expect(result.leastMin / minutes).toBeCloseTo(1, 9)
        expect(result.mostMin / minutes).toBeCloseTo(1, 9)
      },
    ),
  ))

test('a record read more often along its straight lines says the same', () => {
  const coarse = [
    { atMin: 0, doughTempC: 24 },
    { atMin: 120, doughTempC: 31 },
  ]
  const fine = Array.from({ length: 121 }, (_, atMin) => ({ atMin, doughTempC: 24 + (7 * atMin) / 120 }))
  const a = equivalentMinutes({ readings: coarse, referenceTempC: 27 })
  const b = equivalentMinutes({ readings: fine, referenceTempC: 27 })
  expect(a.leastMin / b.leastMin).toBeCloseTo(1, 7)
  expect(a.mostMin / b.mostMin).toBeCloseTo(1, 7)
})

test('a warmer dough counts for more, and the range spans the rules', () => {
  const result = equivalentMinutes({ readings: steady(29, 60), referenceTempC: 26 })
  expect(result.leastMin).toBeGreaterThan(60)
  expect(result.mostMin).toBe(Math.max(...result.rules.map(({ minutes }) => minutes)))
  expect(result.warnings).toEqual([])
})

test('beyond the range of the rules it says so, and where yeast dies the record ends', () => {
  expect(equivalentMinutes({ readings: steady(40, 60), referenceTempC: 26 }).warnings).toEqual(['warmer-than-optimum'])
  expect(equivalentMinutes({ readings: steady(1, 60), referenceTempC: 26 })).toMatchObject({
    leastMin: 0,
    warnings: ['rules-differ-in-the-cold', 'colder-than-minimum'],
  })
  for (const doughTempC of [45.4, 60, 99]) {
    const baked = [...steady(26, 60), { atMin: 90, doughTempC }]
    expect(() => equivalentMinutes({ readings: baked, referenceTempC: 26 })).toThrow(
      expect.objectContaining({
        code: 'out-of-range',
        facts: expect.objectContaining({ field: 'readings[2].doughTempC', max: 45.4 }),
      }),
    )
  }
})

test('it says of a steady dough what minutes at another temperature says', () =>
  fc.assert(
    fc.property(
      fc.double({ min: 3, max: 45, noNaN: true }),
      fc.double({ min: 3, max: 45, noNaN: true }),
      fc.double({ min: 1, max: 900, noNaN: true }),
      (tempC, referenceTempC, minutes) => {
        const record = equivalentMinutes({ readings: steady(tempC, minutes), referenceTempC })
        const steadily = minutesAtTemperature({ minutes, tempC, otherTempC: referenceTempC })
        expect(record.rules.map(({ rule }) => rule)).toEqual(steadily.rules.map(({ rule }) => rule))
        record.rules.forEach((one, i) => expect(one.minutes / steadily.rules[i]!.minutes).toBeCloseTo(1, 8))
      },
    ),
  ))

test('10,000 readings are answered, and a reference at which nothing ferments is refused', () => {
  const readings = Array.from({ length: 10_000 }, (_, i) => ({ atMin: i, doughTempC: 26 + 3 * Math.sin(i) }))
  expect(equivalentMinutes({ readings, referenceTempC: 26 }).mostMin).toBeGreaterThan(9_000)
  expect(() => equivalentMinutes({ readings: steady(26, 60), referenceTempC: 46 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'referenceTempC' }) }),
  )
  expect(() => equivalentMinutes({ readings: [], referenceTempC: 26 })).toThrow(
    expect.objectContaining({ code: 'empty' }),
  )
})
