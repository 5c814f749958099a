import { expect, test } from 'vitest'
import { hydration } from '@/lib/calc/formula/hydration'
import { USDA_SR28 } from '@/tests/published/data/usda-sr28'
import { line, straightDough } from '@/tests/support/formula-samples'

const dough = straightDough(
  line('flour', 'flour', 1000, USDA_SR28.ndb20129),
  line('water', 'water', 400, USDA_SR28.ndb14411),
  line('milk', 'dairy', 200, USDA_SR28.ndb01077, { isPouredLiquid: true }),
  line('egg', 'egg', 100, USDA_SR28.ndb01123),
)

test('the four meanings give four figures', () => {
  expect(hydration(dough, 'plain-water').pctFlour).toBeCloseTo(40, 10)
  expect(hydration(dough, 'poured-liquids').pctFlour).toBeCloseTo(60, 10)
  expect(hydration(dough, 'water-beside-flour').massG).toBeCloseTo(399.6 + 176.26 + 76.15, 10)
  expect(hydration(dough, 'all-water').massG).toBeCloseTo(399.6 + 176.26 + 76.15 + 133.6, 10)
})

test('water that is not stated is named', () => {
  const unknown = straightDough(line('flour', 'flour', 1000), line('water', 'water', 600, USDA_SR28.ndb14411))
  expect(hydration(unknown, 'water-beside-flour').notStatedLineIds).toEqual([])
  expect(hydration(unknown, 'all-water').notStatedLineIds).toEqual(['flour'])
})
