import { expect, test } from 'vitest'
import { waterTempByFactor } from '@/lib/calc/temperature/water-temp-by-factor'

const toC = (f: number) => ((f - 32) * 5) / 9

test('in °C, with the factor changed as a difference, it gives the same water', () => {
  const f = waterTempByFactor({
    wantedTemp: 80,
    roomTemp: 75,
    flourTemp: 65,
    preFermentTemp: 70,
    frictionFactor: 35,
    unit: 'fahrenheit',
  })
  const c = waterTempByFactor({
    wantedTemp: toC(80),
    roomTemp: toC(75),
    flourTemp: toC(65),
    preFermentTemp: toC(70),
    frictionFactor: (35 * 5) / 9,
    unit: 'celsius',
  })
  expect(c).toBeCloseTo(toC(f), 10)
})

const q = {
  wantedTemp: 26,
  roomTemp: 23,
  flourTemp: 21,
  preFermentTemp: null,
  frictionFactor: 14,
  unit: 'celsius',
} as const

test.each([
  ['a room in °F among °C', { ...q, roomTemp: 73 }, 'roomTemp'],
  ['a dough in °C among °F', { ...q, roomTemp: 73, flourTemp: 70, unit: 'fahrenheit' }, 'wantedTemp'],
  ['a pre-ferment in °F among °C', { ...q, preFermentTemp: 70 }, 'preFermentTemp'],
] as const)('%s is said to be a mixture of units', (_, mixed, field) => {
  expect(() => waterTempByFactor(mixed)).toThrow(
    expect.objectContaining({ code: 'out-of-range', facts: expect.objectContaining({ field, reason: 'units-mixed' }) }),
  )
})

test('friction below zero is refused, and so is more than mixing can bring', () => {
  for (const frictionFactor of [-1, 161])
    expect(() => waterTempByFactor({ ...q, frictionFactor })).toThrow(
      expect.objectContaining({ code: 'out-of-range', facts: expect.objectContaining({ field: 'frictionFactor' }) }),
    )
})
