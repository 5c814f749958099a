import { expect, test } from 'vitest'
import { nutrientTotals } from '@/lib/calc/formula/nutrient-totals'
import { USDA_SR28 } from '@/tests/published/data/usda-sr28'
import { line, straightDough } from '@/tests/support/formula-samples'

test('a line without a value is named beside the total that lacks it', () => {
  const { totals } = nutrientTotals(
    straightDough(
      line('flour', 'flour', 1000, USDA_SR28.ndb20129),
      line('acerola', 'improver', 2, USDA_SR28.ndb09001),
      line('x', 'other', 5),
    ),
  )
  expect(totals.find((t) => t.nutrient === 'sugars')?.notStatedLineIds).toEqual(['acerola', 'x'])
  expect(totals.find((t) => t.nutrient === 'water')?.notStatedLineIds).toEqual(['x'])
  expect(totals.find((t) => t.nutrient === 'water')?.massG).toBeCloseTo(133.6 + 1.8282, 10)
})

test('salt as weighed and salt as labelled are two figures', () => {
  const result = nutrientTotals(
    straightDough(line('flour', 'flour', 1000, USDA_SR28.ndb20129), line('salt', 'salt', 20, USDA_SR28.ndb02047)),
  )
  expect(result.saltWeighedG).toBe(20)
  expect(result.totals.find((t) => t.nutrient === 'salt')?.massG).toBeCloseTo(20 * 0.96895 + 0.05, 10)
})

test('odd rows are warned of with the line they belong to', () => {
  const { warnings } = nutrientTotals(
    straightDough(line('flour', 'flour', 1000, USDA_SR28.ndb20129), line('milk', 'dairy', 100, USDA_SR28.ndb01077)),
  )
  expect(warnings).toEqual([
    { code: 'sugars-above-carbohydrate', field: 'lines[1].composition.sugarsPct', value: 5.05 },
  ])
})
