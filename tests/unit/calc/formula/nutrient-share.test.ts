import { expect, test } from 'vitest'
import { nutrientShare } from '@/lib/calc/formula/nutrient-share'
import { USDA_SR28 } from '@/tests/published/data/usda-sr28'

test('each nutrient comes from its own column', () => {
  const egg = USDA_SR28.ndb01123
  expect(nutrientShare(egg, 'water')).toBeCloseTo(0.7615, 12)
  expect(nutrientShare(egg, 'fat')).toBeCloseTo(0.0951, 12)
  expect(nutrientShare(egg, 'protein')).toBeCloseTo(0.1256, 12)
  expect(nutrientShare(egg, 'sugars')).toBeCloseTo(0.0037, 12)
  expect(nutrientShare(USDA_SR28.ndb18374, 'fibre')).toBeCloseTo(0.081, 12)
  expect(nutrientShare(egg, 'salt')).toBeCloseTo(0.00355, 12)
})

test('not stated is null, never zero', () => {
  expect(nutrientShare(USDA_SR28.ndb09001, 'sugars')).toBeNull()
  expect(nutrientShare(null, 'water')).toBeNull()
  expect(nutrientShare({ ...USDA_SR28.ndb01123, sodiumMgPer100g: null }, 'salt')).toBeNull()
})
