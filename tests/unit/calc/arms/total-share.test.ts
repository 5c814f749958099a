import { expect, test } from 'vitest'
import { totalShare } from '@/lib/calc/arms/total-share'
import type { ArmLine } from '@/lib/calc/arms/types'
import { USDA_SR28 } from '@/tests/published/data/usda-sr28'

const egg: ArmLine = {
  id: 'egg',
  massG: 50,
  kind: 'egg',
  isFlour: false,
  composition: USDA_SR28.ndb01123,
  standsInFor: ['water', 'fat'],
  resolutionG: 1,
}

test('fat counts where the line stands in for it, protein does not count where it does not', () => {
  expect(totalShare(egg, 'fat')).toBeCloseTo(0.0951, 12)
  expect(totalShare(egg, 'protein')).toBe(0)
})
test('water counts where the line is marked for it', () => {
  expect(totalShare(egg, 'water')).toBeCloseTo(0.7615, 12)
  expect(totalShare({ ...egg, standsInFor: ['fat'] }, 'water')).toBe(0)
})
test('salt always counts, dough mass in full, flour by its mark', () => {
  expect(totalShare(egg, 'salt')).toBeCloseTo(0.00355, 12)
  expect(totalShare(egg, 'dough-mass')).toBe(1)
  expect(totalShare(egg, 'flour')).toBe(0)
  expect(totalShare({ ...egg, isFlour: true }, 'flour')).toBe(1)
})
test('not stated is null', () => {
  expect(totalShare({ ...egg, composition: null }, 'water')).toBeNull()
  expect(totalShare({ ...egg, composition: null }, 'protein')).toBe(0)
})
