import { expect, test } from 'vitest'
import { CalcError } from '@/lib/calc/error'
import { designMatrix } from '@/lib/calc/mixed-model/design-matrix'
import { mustBeEstimable } from '@/lib/calc/mixed-model/must-be-estimable'
import type { MixedModel, MixedRow } from '@/lib/calc/mixed-model/types'

type Row = { arm: string; block?: string; level?: string; tempC?: number; minutes?: number }

function factsOf(rows: readonly Row[], model: Partial<MixedModel>): unknown {
  const arms = [...new Set(rows.map(({ arm }) => arm))]
  const full = rows.map(
    ({ arm, block = '1', level = '1', tempC = 0, minutes = 0 }): MixedRow => ({
      arm,
      factors: { block, level, batch: '1' },
      covariates: { tempC, minutes },
      y: 0,
    }),
  )
  try {
    mustBeEstimable(designMatrix({ rows: full, model: { arms, random: ['batch'], ...model } }))
    return null
  } catch (error) {
    return error instanceof CalcError ? [error.code, error.facts.field, error.facts.value, error.facts.reason] : error
  }
}

test('arms and blocks in one are named', () => {
  const rows = ['1', '1', '2', '2', '3', '3'].map((name) => ({ arm: name, block: `day ${name}` }))
  expect(factsOf(rows, { fixed: ['block'] })).toEqual(['not-possible', 'arm', 'block', 'confounded'])
})

test('blocks that no arm links are named', () => {
  const rows = [
    ['a', '1'],
    ['a', '2'],
    ['b', '3'],
    ['b', '4'],
  ].map(([arm, block]) => ({ arm: arm!, block: block! }))
  expect(factsOf(rows, { fixed: ['block'] })).toEqual(['not-possible', 'arm', 'block', 'confounded'])
  expect(factsOf([...rows, ...rows, { arm: 'a', block: '3' }], { fixed: ['block'] })).toBeNull()
})

test('a covariate of one value, one that goes with the blocks, one that goes with the arm, and two in one are named', () => {
  const rows = [
    ['a', '1'],
    ['b', '1'],
    ['a', '2'],
    ['b', '2'],
  ].map(([arm, block]) => ({ arm: arm!, block: block! }))
  const temps = (of: (row: { arm: string; block: string }, i: number) => number) =>
    rows.map((row, i) => ({ ...row, tempC: of(row, i), minutes: [3, 8, 4, 1][i]! }))
  expect(
    factsOf(
      temps(() => 26.1),
      { covariates: ['tempC'] },
    ),
  ).toEqual(['not-possible', 'tempC', 26.1, 'constant'])
  expect(
    factsOf(
      temps(() => 0),
      { covariates: ['tempC'] },
    ),
  ).toEqual(['not-possible', 'tempC', 0, 'constant'])
  expect(
    factsOf(
      temps(({ block }) => (block === '1' ? 24 : 27)),
      { fixed: ['block'], covariates: ['tempC'] },
    ),
  ).toEqual(['not-possible', 'tempC', 'block', 'confounded'])
  expect(
    factsOf(
      temps(({ arm }) => (arm === 'a' ? 24 : 27)),
      { covariates: ['tempC'] },
    ),
  ).toEqual(['not-possible', 'arm', 'tempC', 'confounded'])
  const doubled = rows.map((row, i) => ({ ...row, tempC: 20 + 2 * i * i, minutes: 5 + i * i }))
  expect(factsOf(doubled, { covariates: ['tempC', 'minutes'] })).toEqual([
    'not-possible',
    'minutes',
    'tempC',
    'confounded',
  ])
  expect(
    factsOf(
      temps((_, i) => 25 + 1e-3 * i * i),
      { covariates: ['tempC'] },
    ),
  ).toBeNull()
})

test('as many effects as readings leave no degrees of freedom', () => {
  expect(factsOf([{ arm: 'a' }, { arm: 'b' }], {})).toEqual(['not-possible', 'rows', 2, 'no-residual-df'])
})

test('a level baked in one arm only leaves its interaction out, and the empty cell is named', () => {
  const rows = [
    ['a', 'hot'],
    ['a', 'mild'],
    ['b', 'hot'],
    ['b', 'hot'],
  ].map(([arm, level]) => ({ arm: arm!, level: level! }))
  expect(factsOf(rows, { fixed: ['level'], byArm: 'level' })).toEqual([
    'not-possible',
    'arm-by-level',
    'b, mild',
    'empty-cell',
  ])
  expect(factsOf(rows, { fixed: ['level'] })).toBeNull()
  const apart = rows.filter(({ arm, level }) => (arm === 'a') === (level === 'mild'))
  expect(factsOf(apart, { fixed: ['level'] })).toEqual(['not-possible', 'arm', 'level', 'confounded'])
})
