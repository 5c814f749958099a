import { expect, test } from 'vitest'
import { flatFormula } from '@/lib/calc/formula/flat-formula'
import { mustBeFormula } from '@/lib/calc/formula/must-be-formula'

test('lines make a formula: flour by its kind or because it says so, one stage of each kind that is used', () => {
  const formula = flatFormula([
    { id: 'white', massG: 800, kind: 'flour' },
    { id: 'malt', massG: 20, kind: 'improver', isFlour: true },
    { id: 'rye', massG: 180, isFlour: true, stage: 'soaker' },
    { id: 'water', massG: 600, kind: 'water', isPouredLiquid: true },
  ])
  expect(mustBeFormula(formula)).toBe(1000)
  expect(formula.stages).toEqual([
    { id: 'final-dough', kind: 'final-dough' },
    { id: 'soaker', kind: 'soaker' },
  ])
  expect(formula.lines.map(({ kind }) => kind)).toEqual(['flour', 'improver', 'flour', 'water'])
  expect(formula.lines[3]).toMatchObject({ isFlour: false, isPouredLiquid: true, stageId: 'final-dough' })
})
