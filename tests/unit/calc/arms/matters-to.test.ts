import { describe, expect, test } from 'vitest'
import { mattersTo } from '@/lib/calc/arms/matters-to'
import type { ArmLine } from '@/lib/calc/arms/types'
import { USDA_SR28 as F } from '@/tests/published/data/usda-sr28'

const line = (massG: number, composition: ArmLine['composition'], kind: ArmLine['kind'] = 'other'): ArmLine => ({
  id: 'x',
  massG,
  kind,
  isFlour: false,
  composition,
  standsInFor: ['water', 'fat', 'sugars'],
  resolutionG: 1,
})

describe('a line moves for a total', () => {
  test('that it brings a tenth of and is a tenth of', () => {
    expect(mattersTo(line(600, F.ndb14411, 'water'), 'water', 760)).toBe(true)
    expect(mattersTo(line(100, F.ndb01145, 'fat'), 'fat', 81.1)).toBe(true)
    expect(mattersTo(line(20, F.ndb02047, 'salt'), 'salt', 20)).toBe(true)
  })
  test('not for a trace of it, and not as a small part of it', () => {
    // Tap water has 4 mg of sodium in 100 g: 0.06 g of salt in 620 g.
    expect(mattersTo(line(620, F.ndb14411, 'water'), 'salt', 20)).toBe(false)
    // Butter is a sixth water, but brings a fiftieth of the dough's.
    expect(mattersTo(line(100, F.ndb01145, 'fat'), 'water', 760)).toBe(false)
  })
  test('not where it would be spent for a little of it: salted butter for salt', () => {
    expect(mattersTo(line(200, { ...F.ndb01145, sodiumMgPer100g: 643 }, 'fat'), 'salt', 20)).toBe(false)
  })
  test('by what it is made of alone, where the control has none of it', () => {
    expect(mattersTo(line(0, F.ndb14411, 'water'), 'water', 500)).toBe(true)
    expect(mattersTo(line(0, F.ndb01145, 'fat'), 'salt', 20)).toBe(false)
  })
  test('only where it is marked for it, and known', () => {
    expect(mattersTo({ ...line(100, F.ndb01145), standsInFor: [] }, 'fat', 81.1)).toBe(false)
    expect(mattersTo(line(100, null), 'fat', 81.1)).toBe(false)
  })
})
