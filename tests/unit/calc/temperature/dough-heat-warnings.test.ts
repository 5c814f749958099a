import { expect, test } from 'vitest'
import { doughHeatWarnings } from '@/lib/calc/temperature/dough-heat-warnings'

test('friction below zero and a part above 50 °C are said, each alone and both', () => {
  expect(doughHeatWarnings({ friction: 0, partTempsC: [21, 50] })).toEqual([])
  expect(doughHeatWarnings({ friction: -1, partTempsC: [] })).toEqual(['friction-below-zero'])
  expect(doughHeatWarnings({ friction: 5, partTempsC: [21, 70] })).toEqual(['looks-like-fahrenheit'])
  expect(doughHeatWarnings({ friction: -5, partTempsC: [70] })).toEqual([
    'friction-below-zero',
    'looks-like-fahrenheit',
  ])
})
