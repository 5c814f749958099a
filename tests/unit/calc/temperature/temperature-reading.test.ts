import { expect, test } from 'vitest'
import { temperatureReading } from '@/lib/calc/temperature/temperature-reading'

// Freezing and boiling of water, where both scales are defined to meet these figures; −40 is the same on both.
test.each([
  [0, 32],
  [100, 212],
  [-40, -40],
])('%d °C is %d °F, either way', (c, f) => {
  expect(temperatureReading({ reading: c, unit: 'celsius' })).toEqual({ readingTempC: c, readingTempF: f })
  expect(temperatureReading({ reading: f, unit: 'fahrenheit' })).toEqual({ readingTempC: c, readingTempF: f })
})

test('nothing is colder than absolute zero', () => {
  for (const [reading, unit] of [
    [-274, 'celsius'],
    [-460, 'fahrenheit'],
  ] as const)
    expect(() => temperatureReading({ reading, unit })).toThrow(
      expect.objectContaining({ code: 'out-of-range', facts: expect.objectContaining({ field: 'reading' }) }),
    )
})
