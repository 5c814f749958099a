import fc from 'fast-check'
import { expect, test } from 'vitest'
import { roundUs, US_NUTRIENTS } from '@/lib/calc/label/round-us'

test.each(US_NUTRIENTS)('%s: more is never less on the label', (nutrient) =>
  fc.assert(
    fc.property(
      fc.double({ min: 0, max: 400, noNaN: true }),
      fc.double({ min: 0, max: 50, noNaN: true }),
      (value, more) => {
        expect(roundUs({ nutrient, value: value + more }).roundedValue).toBeGreaterThanOrEqual(
          roundUs({ nutrient, value }).roundedValue,
        )
      },
    ),
  ),
)

test('where the rule changes: each step belongs to the figures that it is written for', () => {
  const label = (nutrient: (typeof US_NUTRIENTS)[number], value: number) => Object.values(roundUs({ nutrient, value }))
  expect(label('calories', 4.99)).toEqual([0, 'zero'])
  expect(label('calories', 47.5)).toEqual([50, 'figure'])
  expect(label('calories', 54.9)).toEqual([50, 'figure'])
  expect(label('calories', 55)).toEqual([60, 'figure'])
  expect(label('total-fat', 0.49)).toEqual([0, 'zero'])
  expect(label('total-fat', 0.5)).toEqual([0.5, 'figure'])
  expect(label('total-fat', 4.8)).toEqual([5, 'figure'])
  expect(label('sodium', 137.5)).toEqual([140, 'figure'])
  expect(label('sodium', 144)).toEqual([140, 'figure'])
  expect(label('protein', 0.99)).toEqual([1, 'less-than'])
  expect(label('protein', 1.49)).toEqual([1, 'figure'])
})

test('less than nothing is refused', () => {
  expect(() => roundUs({ nutrient: 'sodium', value: -1 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'value' }) }),
  )
})
