import { expect, test } from 'vitest'
import { liquefactionNumber } from '@/lib/calc/flour/liquefaction-number'

test('the lowest reading there is counts, and anything below it is refused', () => {
  expect(liquefactionNumber('fallingNumberS', 60)).toBe(600)
  for (const reading of [59.9, 50, 0])
    expect(() => liquefactionNumber('fallingNumberS', reading)).toThrow(
      expect.objectContaining({
        facts: expect.objectContaining({ field: 'fallingNumberS', reason: 'falling-number-below-60' }),
      }),
    )
})
