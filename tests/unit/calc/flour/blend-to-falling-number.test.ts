import fc from 'fast-check'
import { expect, test } from 'vitest'
import { blendFallingNumber } from '@/lib/calc/flour/blend-falling-number'
import { blendToFallingNumber } from '@/lib/calc/flour/blend-to-falling-number'

test('the blend that it asks for has the falling number wanted', () =>
  fc.assert(
    fc.property(fc.double({ min: 120, max: 450, noNaN: true }), (wantedFallingNumberS) => {
      const found = blendToFallingNumber({
        firstFallingNumberS: 450,
        secondFallingNumberS: 120,
        wantedFallingNumberS,
        massG: 900,
      })
      const parts = [
        { massG: found.firstMassG, fallingNumberS: 450 },
        { massG: found.secondMassG, fallingNumberS: 120 },
      ]
      expect(found.firstMassG + found.secondMassG).toBeCloseTo(900, 8)
      expect(blendFallingNumber({ parts }).fallingNumberS).toBeCloseTo(wantedFallingNumberS, 6)
    }),
  ))

test('what neither flour nor blend has is refused', () => {
  const q = { firstFallingNumberS: 400, secondFallingNumberS: 220, massG: 1000 }
  expect(() => blendToFallingNumber({ ...q, wantedFallingNumberS: 410 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ reason: 'not-between' }) }),
  )
  expect(() => blendToFallingNumber({ ...q, secondFallingNumberS: 400, wantedFallingNumberS: 400 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ reason: 'same-figure' }) }),
  )
})
