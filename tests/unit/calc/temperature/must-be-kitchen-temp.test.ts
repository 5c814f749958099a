import { expect, test } from 'vitest'
import { mustBeKitchenTemp } from '@/lib/calc/temperature/must-be-kitchen-temp'

const boundsC = { min: 0, max: 50 }
const refusalOf = (value: number, unit: 'celsius' | 'fahrenheit') => {
  try {
    return mustBeKitchenTemp('roomTemp', value, { unit, boundsC })
  } catch (error) {
    return error
  }
}

test('what lies within is given back', () => {
  expect(refusalOf(23, 'celsius')).toBe(23)
  expect(refusalOf(73, 'fahrenheit')).toBe(73)
})

test.each([
  [73, 'celsius'],
  [23, 'fahrenheit'],
] as const)('%d in %s is most likely of the other unit', (value, unit) =>
  expect(refusalOf(value, unit)).toMatchObject({
    code: 'out-of-range',
    facts: { field: 'roomTemp', value, reason: 'units-mixed' },
  }),
)

test('what is wrong in both has its bounds in its own unit', () => {
  expect(refusalOf(400, 'fahrenheit')).toMatchObject({ code: 'out-of-range', facts: { min: 32, max: 122 } })
  expect((refusalOf(400, 'fahrenheit') as { facts: object }).facts).not.toHaveProperty('reason')
  expect(refusalOf(Number.NaN, 'celsius')).toMatchObject({ code: 'not-finite' })
})
