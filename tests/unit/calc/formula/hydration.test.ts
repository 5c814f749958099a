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

test('what is no dough is said, but not while a line does not state its water', () => {
  const withWater = (massG: number) =>
    hydration(
      straightDough(line('flour', 'flour', 100), line('water', 'water', massG, USDA_SR28.ndb14411)),
      'plain-water',
    ).warnings
  expect(withWater(0)).toEqual(['no-water'])
  expect(withWater(12)).toEqual(['stiffer-than-dough'])
  expect(withWater(62)).toEqual([])
  expect(withWater(6200)).toEqual(['wetter-than-dough'])
  const unknown = straightDough(line('flour', 'flour', 1000), line('milk', 'dairy', 100))
  expect(hydration(unknown, 'water-beside-flour')).toMatchObject({ notStatedLineIds: ['milk'], warnings: [] })
})

test('flour is not poured', () => {
  const poured = straightDough(line('water', 'water', 60), line('flour', 'flour', 100, null, { isPouredLiquid: true }))
  expect(() => hydration(poured, 'poured-liquids')).toThrow(
    expect.objectContaining({
      facts: expect.objectContaining({ field: 'lines[1].isPouredLiquid', reason: 'flour-is-not-poured' }),
    }),
  )
})
