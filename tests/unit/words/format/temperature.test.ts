import { expect, it } from 'vitest'
import { temperatureFromUnit, temperatureInUnit } from '@/lib/words/format/temperature'

// Definition of the degree Fahrenheit: water freezes at 32 °F and boils at 212 °F (NIST SP 811, appendix B).
it.each([
  [0, 32],
  [100, 212],
  [-40, -40],
  [25, 77],
])('%d °C is %d °F', (tempC, tempF) => {
  expect(temperatureInUnit(tempC, 'fahrenheit')).toBeCloseTo(tempF, 12)
  expect(temperatureFromUnit(tempF, 'fahrenheit')).toBeCloseTo(tempC, 12)
  expect(temperatureInUnit(tempC, 'celsius')).toBe(tempC)
})
