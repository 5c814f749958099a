import { expect, test } from 'vitest'
import { titratableAcidity } from '@/lib/calc/acidity/titratable-acidity'

test('neither the size of the sample nor the strength of the alkali changes the finding', () => {
  const one = titratableAcidity({ sampleMassG: 10, alkaliMl: 8, alkaliMolPerL: 0.1 })
  const other = titratableAcidity({ sampleMassG: 25, alkaliMl: 4, alkaliMolPerL: 0.5 })
  expect(one.acidityMlPer10g).toBeCloseTo(8, 12)
  expect(other.acidityMlPer10g).toBeCloseTo(8, 12)
  expect(other.lacticAcidPct).toBeCloseTo(one.lacticAcidPct, 12)
})

test('no sample, and more acid than sample, are refused', () => {
  expect(() => titratableAcidity({ sampleMassG: 0, alkaliMl: 8, alkaliMolPerL: 0.1 })).toThrow(expect.objectContaining({ code: 'out-of-range' }))
  expect(() => titratableAcidity({ sampleMassG: 1, alkaliMl: 200, alkaliMolPerL: 1 })).toThrow(expect.objectContaining({ facts: expect.objectContaining({ field: 'alkaliMl' }) }))
})
