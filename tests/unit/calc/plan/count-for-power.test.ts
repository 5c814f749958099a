import { expect, test } from 'vitest'
import { countForPower } from '@/lib/calc/plan/count-for-power'

const powerAt = (count: number) => 1 - Math.exp(-count / 10)

test('the root is met exactly, the whole number is the next one up', () => {
  const got = countForPower({ powerAt, power: 0.8, least: 2 })
  expect(got.countContinuous).toBeCloseTo(-10 * Math.log(0.2), 8)
  expect(got).toMatchObject({ count: 17, power: powerAt(17), powerOneFewer: powerAt(16) })
})

test('a root on a whole number is that number', () => {
  expect(countForPower({ powerAt, power: powerAt(12), least: 2 }).count).toBe(12)
})

test('where the least number is enough there is no root', () => {
  expect(countForPower({ powerAt, power: 0.1, least: 2 })).toEqual({
    count: 2,
    countContinuous: null,
    power: powerAt(2),
    powerOneFewer: null,
  })
})

test('a power out of reach says how far 10,000 come', () => {
  expect(() => countForPower({ powerAt: () => 0.3, power: 0.8, least: 2 })).toThrow(/power-out-of-reach/)
  expect(() => countForPower({ powerAt: () => 0.3, power: 0.8, least: 2 })).toThrow(/"value":0.3/)
})

test.each([0, 1, NaN, -0.5])('a wanted power of %s is refused', (power) => {
  expect(() => countForPower({ powerAt, power, least: 2 })).toThrow('"power"')
})
