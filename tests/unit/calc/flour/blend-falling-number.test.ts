import fc from 'fast-check'
import { expect, test } from 'vitest'
import { blendFallingNumber } from '@/lib/calc/flour/blend-falling-number'

const seconds = fc.double({ min: 60, max: 600, noNaN: true })

test('a blend lies between its flours, and never above the mean of the seconds', () =>
  fc.assert(
    fc.property(seconds, seconds, fc.double({ min: 0.01, max: 0.99, noNaN: true }), (a, b, share) => {
      const found = blendFallingNumber({
        parts: [
          { massG: share, fallingNumberS: a },
          { massG: 1 - share, fallingNumberS: b },
        ],
      }).fallingNumberS
      expect(found).toBeGreaterThanOrEqual(Math.min(a, b) - 1e-9)
      expect(found).toBeLessThanOrEqual(share * a + (1 - share) * b + 1e-9)
    }),
  ))

test('parts of no mass, and a reading below 60, are refused', () => {
  expect(() => blendFallingNumber({ parts: [{ massG: 0, fallingNumberS: 300 }] })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ reason: 'no-mass' }) }),
  )
  expect(() =>
    blendFallingNumber({
      parts: [
        { massG: 1, fallingNumberS: 300 },
        { massG: 0, fallingNumberS: 55 },
      ],
    }),
  ).toThrow(expect.objectContaining({ facts: expect.objectContaining({ field: 'parts[1].fallingNumberS' }) }))
})
