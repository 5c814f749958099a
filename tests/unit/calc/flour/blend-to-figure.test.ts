import fc from 'fast-check'
import { expect, test } from 'vitest'
import { blendToFigure } from '@/lib/calc/flour/blend-to-figure'

const moist = fc.double({ min: 8, max: 16, noNaN: true })

test('protein and mass of what is weighed add up to the blend, at any basis', () =>
  fc.assert(
    fc.property(
      moist,
      moist,
      fc.constantFrom(0, 14, 15),
      fc.double({ min: 0, max: 1, noNaN: true }),
      (m1, m2, basisMoisturePct, share) => {
        const q = {
          firstPct: 15,
          secondPct: 8,
          basis: 'moisture' as const,
          basisMoisturePct,
          firstMoisturePct: m1,
          secondMoisturePct: m2,
          massG: 1000,
        }
        const [high, low] = [(15 * (100 - basisMoisturePct)) / (100 - m1), (8 * (100 - basisMoisturePct)) / (100 - m2)]
        const wantedPct = low + share * (high - low)
        const found = blendToFigure({ ...q, wantedPct })
        expect((15 * found.firstMassG + 8 * found.secondMassG) / 100).toBeCloseTo(10 * wantedPct, 6)
        const dry = (found.firstMassG * (100 - m1) + found.secondMassG * (100 - m2)) / 100
        expect(dry).toBeCloseTo(10 * (100 - basisMoisturePct), 6)
      },
    ),
  ))

test('what lies outside the two, and two that are alike, are refused', () => {
  const q = { firstPct: 14, secondPct: 9, basis: 'as-is' as const, massG: 1000 }
  expect(() => blendToFigure({ ...q, wantedPct: 8.9 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'wantedPct', reason: 'not-between' }) }),
  )
  expect(() => blendToFigure({ ...q, secondPct: 14, wantedPct: 14 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ reason: 'same-figure' }) }),
  )
})

test('a moisture that the basis needs is asked for', () => {
  const q = {
    firstPct: 14,
    secondPct: 9,
    wantedPct: 12,
    basis: 'moisture' as const,
    basisMoisturePct: 14,
    firstMoisturePct: 13,
    massG: 1000,
  }
  expect(() => blendToFigure(q)).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'secondMoisturePct', reason: 'not-given' }) }),
  )
})
