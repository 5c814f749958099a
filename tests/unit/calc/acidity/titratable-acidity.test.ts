import { expect, test } from 'vitest'
import { titratableAcidity } from '@/lib/calc/acidity/titratable-acidity'

const sample = { sampleMassG: 10, alkaliMl: 8, alkaliMolPerL: 0.1, endPointPh: 8.5 }

test('neither the size of the sample nor the strength of the alkali changes the finding', () => {
  const one = titratableAcidity(sample)
  const other = titratableAcidity({ ...sample, sampleMassG: 25, alkaliMl: 4, alkaliMolPerL: 0.5 })
  expect(one.acidityMlPer10g).toBeCloseTo(8, 12)
  expect(other.acidityMlPer10g).toBeCloseTo(8, 12)
  expect(other.lacticAcidPct).toBeCloseTo(one.lacticAcidPct, 12)
})

test('the answer carries the pH that it was titrated to, and says that only the same compare', () => {
  for (const endPointPh of [6.6, 7, 8.2, 8.5]) {
    const { endPointPh: shown, warnings } = titratableAcidity({ ...sample, endPointPh })
    expect(shown).toBe(endPointPh)
    expect(warnings).toContain('same-end-point-only')
    expect(warnings.includes('not-the-usual-end-point')).toBe(endPointPh !== 8.5)
  }
})

test('without a pH to titrate to, or with one that is no end of acid, there is no acidity', () => {
  for (const endPointPh of [Number.NaN, 4.2, 0, 14])
    expect(() => titratableAcidity({ ...sample, endPointPh })).toThrow(
      expect.objectContaining({ facts: expect.objectContaining({ field: 'endPointPh' }) }),
    )
})

test('no sample, and more acid than sample, are refused', () => {
  expect(() => titratableAcidity({ ...sample, sampleMassG: 0 })).toThrow(
    expect.objectContaining({ code: 'out-of-range' }),
  )
  expect(() => titratableAcidity({ ...sample, sampleMassG: 1, alkaliMl: 200, alkaliMolPerL: 1 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ field: 'alkaliMl' }) }),
  )
})
