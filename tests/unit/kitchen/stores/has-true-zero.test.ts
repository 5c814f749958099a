import { expect, test } from 'vitest'
import { hasTrueZero } from '@/lib/kitchen/stores/has-true-zero'
import { standardMeasures } from '@/lib/kitchen/stores/standard-measures'

test.each(['°C', '°F', 'pH', 'L*', ' score '])('%s has none', (unit) => {
  expect(hasTrueZero({ unit })).toBe(false)
})

test('of the standard measures temperatures alone have none', () => {
  const without = standardMeasures.filter(({ unit, least }) => !hasTrueZero({ unit, plausibleLeast: least }))
  expect(without.map(({ code }) => code)).toEqual(['dough-temp', 'flour-temp', 'room-temp', 'water-temp'])
})

test('what can be below zero has none, whatever its unit', () => {
  expect(hasTrueZero({ unit: 'mm', plausibleLeast: -3 })).toBe(false)
  expect(hasTrueZero({ unit: 'mm', plausibleLeast: 0 })).toBe(true)
})
