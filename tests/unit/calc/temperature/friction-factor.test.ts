import { expect, test } from 'vitest'
import { frictionFactor } from '@/lib/calc/temperature/friction-factor'
import { waterTempByFactor } from '@/lib/calc/temperature/water-temp-by-factor'

test('the water that the factor asks for gives the dough it was learned from', () => {
  for (const preFermentTemp of [null, 21]) {
    const seen = {
      actualTemp: 27,
      roomTemp: 23,
      flourTemp: 21,
      waterTemp: 17,
      preFermentTemp,
      unit: 'celsius' as const,
    }
    const factor = frictionFactor(seen)
    expect(
      waterTempByFactor({
        wantedTemp: 27,
        roomTemp: 23,
        flourTemp: 21,
        preFermentTemp,
        frictionFactor: factor,
        unit: 'celsius',
      }),
    ).toBeCloseTo(17, 10)
  }
})

test('a dough that mixing cooled is refused: a reading is wrong', () =>
  expect(() =>
    frictionFactor({
      actualTemp: 20,
      roomTemp: 23,
      flourTemp: 21,
      waterTemp: 18,
      preFermentTemp: null,
      unit: 'celsius',
    }),
  ).toThrow(
    expect.objectContaining({
      code: 'not-possible',
      facts: expect.objectContaining({ field: 'actualTemp', reason: 'friction-below-zero' }),
    }),
  ))

test('water in °F among °C is said to be a mixture of units', () =>
  expect(() =>
    frictionFactor({
      actualTemp: 26,
      roomTemp: 23,
      flourTemp: 21,
      waterTemp: 65,
      preFermentTemp: null,
      unit: 'celsius',
    }),
  ).toThrow(
    expect.objectContaining({
      code: 'out-of-range',
      facts: expect.objectContaining({ field: 'waterTemp', reason: 'units-mixed' }),
    }),
  ))
