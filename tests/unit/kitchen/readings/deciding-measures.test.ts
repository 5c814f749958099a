import { expect, it } from 'vitest'
import { decidingMeasures } from '@/lib/kitchen/readings/deciding-measures'

const measures = [
  { id: 'm', code: 'loaf-mass', derivation: null },
  { id: 'v', code: 'loaf-volume', derivation: null },
  { id: 's', code: 'specific-volume', derivation: 'loaf-volume / loaf-mass' },
  { id: 't', code: 'dough-temp', derivation: null },
  { id: 'own', code: null, derivation: null },
]

it('are the measure itself, and what it is worked out of', () => {
  expect([...decidingMeasures(measures, 's')].sort()).toEqual(['m', 's', 'v'])
  expect([...decidingMeasures(measures, 't')]).toEqual(['t'])
  expect([...decidingMeasures(measures, 'own')]).toEqual(['own'])
})
