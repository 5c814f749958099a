import { expect, test } from 'vitest'
import { scald } from '@/lib/calc/preferment/scald'

const q = { flourMassG: 3000, doughHydrationPct: 70, scaldFlourG: 240, scaldWaterG: 600, scaldWeighedG: 790 }

test('water in the scald and water at the dough are the water of the formula, however much boiled away', () => {
  for (const scaldWeighedG of [300, 700, 840]) {
    const found = scald({ ...q, scaldWeighedG })
    expect(found.waterInScaldG + found.doughWaterG).toBeCloseTo(2100, 10)
    expect(found.evaporatedG + found.waterInScaldG).toBeCloseTo(600, 10)
  }
})

test('a scald heavier than what went in, or lighter than its flour, is refused: the pot was weighed too, or misread', () => {
  for (const scaldWeighedG of [841, 239])
    expect(() => scald({ ...q, scaldWeighedG })).toThrow(expect.objectContaining({ facts: expect.objectContaining({ field: 'scaldWeighedG' }) }))
})

test('more water in the scald than the dough has is refused', () => {
  expect(() => scald({ ...q, scaldWaterG: 4000, scaldWeighedG: 4000 })).toThrow(
    expect.objectContaining({ facts: expect.objectContaining({ reason: 'not-enough-water' }) }),
  )
})
