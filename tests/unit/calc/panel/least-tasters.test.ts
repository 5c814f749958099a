import { expect, test } from 'vitest'
import { leastTasters } from '@/lib/calc/panel/least-tasters'

test('a power that only rises has one number for both', () => {
  expect(leastTasters({ power: 0.5, powerAt: (tasters) => 1 - 1 / tasters })).toEqual({
    tasters: 2,
    powerReached: 0.5,
    steadyTasters: 2,
  })
})

test('a power that falls back is reached first and stays later', () => {
  const powerAt = (tasters: number) => (tasters === 12 || tasters === 17 ? 0.7 : tasters / (tasters + 2))
  expect(leastTasters({ power: 0.8, powerAt })).toEqual({ tasters: 8, powerReached: 0.8, steadyTasters: 18 })
})

test('the largest panel that is looked at can be the answer, and beyond it there is none', () => {
  expect(leastTasters({ power: 0.5, powerAt: (tasters) => (tasters >= 2000 ? 0.9 : 0.1) }).steadyTasters).toBe(2000)
  expect(() => leastTasters({ power: 0.5, powerAt: (tasters) => (tasters >= 2001 ? 0.9 : 0.1) })).toThrow(
    'too-many-tasters',
  )
  expect(() => leastTasters({ power: 0.5, powerAt: () => 0.1 })).toThrow('too-many-tasters')
})

test('a power of none, of certainty, or in per cent is refused', () => {
  for (const power of [0, 1, 80, NaN]) expect(() => leastTasters({ power, powerAt: () => 1 })).toThrow('power')
})
