import { expect, test } from 'vitest'
import { scald } from '@/lib/calc/preferment/scald'

const q = { flourMassG: 3000, doughHydrationPct: 70, scaldedPct: 8, scaldHydrationPct: 250, by: 'weighed' as const }

test('water in the scald and water at the dough are the water of the formula, however much boiled away', () => {
  for (const scaldWeighedG of [300, 700, 840]) {
    const found = scald({ ...q, scaldWeighedG })
    expect(found.waterInScaldG + found.doughWaterG).toBeCloseTo(2100, 10)
    expect(found.evaporatedG + found.waterInScaldG).toBeCloseTo(600, 10)
  }
})

test('a loss that is expected and the scald that weighs so are the same dough', () => {
  const expected = scald({ ...q, by: 'expected-loss', lossOfWaterPct: 9 })
  expect(scald({ ...q, scaldWeighedG: expected.scaldMassG }).doughWaterG).toBeCloseTo(expected.doughWaterG, 10)
  expect(expected.evaporatedG).toBeCloseTo(54, 10)
})

test('a scald heavier than what went in, or lighter than its flour, is refused: the pot was weighed too, or misread', () => {
  for (const scaldWeighedG of [841, 239])
    expect(() => scald({ ...q, scaldWeighedG })).toThrow(
      expect.objectContaining({ facts: expect.objectContaining({ field: 'scaldWeighedG' }) }),
    )
})

test('what the choice needs is asked for', () => {
  expect(() => scald(q)).toThrow(expect.objectContaining({ facts: { field: 'scaldWeighedG', reason: 'not-given' } }))
  expect(() => scald({ ...q, by: 'expected-loss' })).toThrow(
    expect.objectContaining({ facts: { field: 'lossOfWaterPct', reason: 'not-given' } }),
  )
})

test('more water in the scald than the dough has is refused', () => {
  expect(() => scald({ ...q, scaldHydrationPct: 1000, by: 'expected-loss', lossOfWaterPct: 5 })).toThrow(
    expect.objectContaining({
      facts: expect.objectContaining({ field: 'scaldHydrationPct', reason: 'not-enough-water' }),
    }),
  )
})
