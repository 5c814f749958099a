import { expect, test } from 'vitest'
import { maltToFallingNumber } from '@/lib/calc/flour/malt-to-falling-number'

const q = { fallingNumberS: 380, triedDosePctFlour: 0.2, triedFallingNumberS: 260 }

test('the dose that was tried is the answer for what it gave, and nothing for the flour alone', () => {
  expect(maltToFallingNumber({ ...q, wantedFallingNumberS: 260 })).toEqual({
    dosePctFlour: expect.closeTo(0.2, 12),
    warnings: ['check-with-flour'],
  })
  expect(maltToFallingNumber({ ...q, wantedFallingNumberS: 380 }).dosePctFlour).toBe(0)
})

test('more than was tried is said', () => {
  expect(maltToFallingNumber({ ...q, wantedFallingNumberS: 250 }).warnings).toContain('beyond-tried-dose')
})

test('a malt that did nothing, and a falling number above the flour’s own, are refused', () => {
  expect(() => maltToFallingNumber({ ...q, triedFallingNumberS: 380, wantedFallingNumberS: 300 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ reason: 'malt-without-effect' }) }),
  )
  expect(() => maltToFallingNumber({ ...q, wantedFallingNumberS: 400 })).toThrow(
    expect.objectContaining({
      facts: expect.objectContaining({ field: 'wantedFallingNumberS', reason: 'malt-only-lowers' }),
    }),
  )
})
