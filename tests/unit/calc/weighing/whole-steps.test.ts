import { expect, test } from 'vitest'
import { stepsToG, wholeSteps } from '@/lib/calc/weighing/whole-steps'

test('a mass on a mark has no rest, whatever binary makes of it', () => {
  expect(wholeSteps(0.3, 0.1)).toEqual({ steps: 3, restSteps: 0 })
  expect(wholeSteps(1.1, 0.001)).toEqual({ steps: 1100, restSteps: 0 })
})
test('between marks the rest is the part of a step', () => {
  const { steps, restSteps } = wholeSteps(7.25, 1)
  expect(steps).toBe(7)
  expect(restSteps).toBeCloseTo(0.25, 12)
})
test('steps come back without binary dust', () => expect(stepsToG(3, 0.1)).toBe(0.3))
