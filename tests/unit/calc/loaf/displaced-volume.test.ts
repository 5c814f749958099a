import { expect, test } from 'vitest'
import { displacedVolumeMl } from '@/lib/calc/loaf/displaced-volume'

test('an offset is taken off, and one that reads too little is given back', () => {
  expect(displacedVolumeMl({ withLoafMl: 2400, withoutLoafMl: 0, offsetMl: 400 })).toBe(2000)
  expect(displacedVolumeMl({ withLoafMl: 2400, withoutLoafMl: 400, offsetMl: -20 })).toBe(2020)
})
test('a loaf of no volume is refused', () =>
  expect(() => displacedVolumeMl({ withLoafMl: 300, withoutLoafMl: 300, offsetMl: 0 })).toThrow(
    expect.objectContaining({ code: 'not-possible', facts: expect.objectContaining({ reason: 'no-volume' }) }),
  ))
