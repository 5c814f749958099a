import { expect, test } from 'vitest'
import { timeIntegralMin } from '@/lib/calc/fermentation/time-integral'

const readings = [
  { atMin: 0, doughTempC: 20 },
  { atMin: 60, doughTempC: 30 },
  { atMin: 90, doughTempC: 30 },
]

test('a rate of one integrates to the time, a linear rate to its mean times the time', () => {
  expect(timeIntegralMin({ readings, rate: () => 1, cornersC: [] })).toBeCloseTo(90, 10)
  expect(timeIntegralMin({ readings, rate: (t) => t, cornersC: [] })).toBeCloseTo(60 * 25 + 30 * 30, 8)
})

test('an exponential rate comes out as its closed form', () => {
  const rate = (t: number) => 1.1 ** t
  const exact = (60 * (rate(30) - rate(20))) / Math.log(rate(30) / rate(20)) + 30 * rate(30)
  expect(timeIntegralMin({ readings, rate, cornersC: [] }) / exact).toBeCloseTo(1, 8)
})

test('a corner is cut at, warming and cooling alike', () => {
  const rate = (t: number) => Math.max(0, t - 23.3)
  const up = [readings[0]!, readings[1]!]
  const down = [
    { atMin: 0, doughTempC: 30 },
    { atMin: 60, doughTempC: 20 },
  ]
  for (const record of [up, down]) {
    expect(timeIntegralMin({ readings: record, rate, cornersC: [23.3] })).toBeCloseTo((6.7 * 40.2) / 2, 8)
  }
})

test('one reading, times that go back and temperatures of no dough are refused', () => {
  const rate = () => 1
  expect(() => timeIntegralMin({ readings: readings.slice(0, 1), rate, cornersC: [] })).toThrow(
    expect.objectContaining({ code: 'empty' }),
  )
  expect(() => timeIntegralMin({ readings: [...readings, readings[0]!], rate, cornersC: [] })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'readings[3].atMin' }) }),
  )
  expect(() =>
    timeIntegralMin({ readings: [readings[0]!, { atMin: 5, doughTempC: 180 }], rate, cornersC: [] }),
  ).toThrow(expect.objectContaining({ code: 'out-of-range' }))
})
