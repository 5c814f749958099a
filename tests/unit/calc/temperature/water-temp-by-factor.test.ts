import { expect, test } from 'vitest'
import { waterTempByFactor } from '@/lib/calc/temperature/water-temp-by-factor'

const toC = (f: number) => ((f - 32) * 5) / 9

test('in °C, with the factor changed as a difference, it gives the same water', () => {
  const f = waterTempByFactor({ wantedTemp: 80, roomTemp: 75, flourTemp: 65, preFermentTemp: 70, frictionFactor: 35 })
  const c = waterTempByFactor({
    wantedTemp: toC(80),
    roomTemp: toC(75),
    flourTemp: toC(65),
    preFermentTemp: toC(70),
    frictionFactor: (35 * 5) / 9,
  })
  expect(c).toBeCloseTo(toC(f), 10)
})
