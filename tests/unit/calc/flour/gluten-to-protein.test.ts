import { expect, test } from 'vitest'
import { glutenToProtein } from '@/lib/calc/flour/gluten-to-protein'

test('both ways have the protein wanted', () => {
  const found = glutenToProtein({ flourMassG: 1000, flourProteinPct: 10, glutenProteinPct: 75, wantedProteinPct: 13 })
  expect((10 * found.replacingFlourG + 75 * found.replacingGlutenG) / 1000).toBeCloseTo(13, 10)
  expect((10 * 1000 + 75 * found.onTopGlutenG) / (1000 + found.onTopGlutenG)).toBeCloseTo(13, 10)
  expect(found.cautions).toContain('gluten-is-wheat')
})

test('less protein than the flour has, and as much as gluten, are refused', () => {
  const q = { flourMassG: 1000, flourProteinPct: 10, glutenProteinPct: 75 }
  for (const wantedProteinPct of [9.9, 75])
    expect(() => glutenToProtein({ ...q, wantedProteinPct })).toThrow(
      expect.objectContaining({ facts: expect.objectContaining({ field: 'wantedProteinPct' }) }),
    )
})
