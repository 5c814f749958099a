import { expect, test } from 'vitest'
import { hasTrueZero } from '@/lib/kitchen/stores/has-true-zero'
import { standardMeasures } from '@/lib/kitchen/stores/standard-measures'

test.each(['°C', '°F', 'pH', 'L*', ' score '])('%s has none', (unit) => {
  expect(hasTrueZero({ unit })).toBe(false)
})

test('of the standard measures dough temperature alone has none', () => {
  const without = standardMeasures.filter(({ unit, least }) => !hasTrueZero({ unit, plausibleLeast: least }))
  expect(without.map(({ code }) => code)).toEqual(['dough-temp'])
})

test('what can be below zero has none, whatever its unit', () => {
  expect(hasTrueZero({ unit: 'mm', plausibleLeast: -3 })).toBe(false)
  expect(hasTrueZero({ unit: 'mm', plausibleLeast: 0 })).toBe(true)
})
