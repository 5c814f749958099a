import { describe, expect, test } from 'vitest'
import { mustBeFormula } from '@/lib/calc/formula/must-be-formula'
import { line, straightDough } from '@/tests/support/formula-samples'

describe('a formula that cannot be worked on is refused at its field', () => {
  const refused = (formula: Parameters<typeof mustBeFormula>[0]) => {
    try {
      mustBeFormula(formula)
    } catch (error) {
      return error
    }
    return null
  }
  test('no lines', () => expect(refused(straightDough())).toMatchObject({ code: 'empty', facts: { field: 'lines' } }))
  test('no flour', () =>
    expect(refused(straightDough(line('water', 'water', 10)))).toMatchObject({
      code: 'out-of-range',
      facts: { field: 'flourMassG' },
    }))
  test('negative mass', () =>
    expect(refused(straightDough(line('f', 'flour', 10), line('w', 'water', -1)))).toMatchObject({
      code: 'out-of-range',
      facts: { field: 'lines[1].massG', value: -1 },
    }))
  test('mass that is not a number', () =>
    expect(refused(straightDough(line('f', 'flour', Number.NaN)))).toMatchObject({ code: 'not-finite' }))
  test('same id twice', () =>
    expect(refused(straightDough(line('f', 'flour', 10), line('f', 'flour', 10)))).toMatchObject({
      code: 'duplicate',
      facts: { field: 'lines[1].id' },
    }))
  test('a stage that is not there', () =>
    expect(refused(straightDough(line('f', 'flour', 10, null, { stageId: 'poolish' })))).toMatchObject({
      code: 'not-possible',
      facts: { reason: 'unknown-stage' },
    }))
  test('a stage twice', () =>
    expect(
      refused({
        stages: [
          { id: 'a', kind: 'soaker' },
          { id: 'a', kind: 'scald' },
        ],
        lines: [line('f', 'flour', 1)],
      }),
    ).toMatchObject({ code: 'duplicate', facts: { field: 'stages[1].id' } }))
})

test('total flour is taken over all stages', () => {
  const formula = {
    stages: [
      { id: 'dough', kind: 'final-dough' as const },
      { id: 'scald', kind: 'scald' as const },
    ],
    lines: [line('a', 'flour', 900), line('b', 'flour', 100, null, { stageId: 'scald' })],
  }
  expect(mustBeFormula(formula)).toBe(1000)
})
