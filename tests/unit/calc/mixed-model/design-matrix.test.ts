import { expect, test } from 'vitest'
import { designMatrix } from '@/lib/calc/mixed-model/design-matrix'
import type { MixedModel, MixedRow } from '@/lib/calc/mixed-model/types'

const row = (arm: string, batch: string, level: string, tempC: number): MixedRow => ({
  arm,
  factors: { batch, level },
  covariates: { tempC },
  y: 1,
})
const rows = [row('c', '1', 'hot', 24), row('c', '1', 'mild', 26), row('t', '2', 'hot', 27), row('t', '2', 'mild', 27)]
const model: MixedModel = {
  arms: ['c', 't'],
  fixed: ['level'],
  covariates: ['tempC'],
  byArm: 'level',
  random: ['batch'],
}

test('intercept, factors from their second level on, covariates about the mean, arms against the control, interaction', () => {
  const { x, columns, levels, covariateMeans } = designMatrix({ rows, model })
  expect(columns.map(({ term, level, arm }) => [term, level, arm].join(' '))).toEqual([
    'intercept  ',
    'level mild ',
    'tempC  ',
    'arm t ',
    'arm-by-level mild t',
  ])
  expect(x).toEqual([
    [1, 0, -2, 0, 0],
    [1, 1, 0, 0, 0],
    [1, 0, 1, 1, 0],
    [1, 1, 1, 1, 1],
  ])
  expect(levels.level).toEqual(['hot', 'mild'])
  expect(covariateMeans.tempC).toBe(26)
})

test('a stated order of levels holds whatever the order of rows', () => {
  const stated = { ...model, levelOrder: { level: ['mild', 'hot'] } }
  for (const own of [rows, [...rows].reverse()]) {
    const { columns, levels } = designMatrix({ rows: own, model: stated })
    expect(levels.level).toEqual(['mild', 'hot'])
    expect(columns.filter(({ term }) => term === 'level').map(({ level }) => level)).toEqual(['hot'])
  }
})

test.each<[string, Partial<MixedModel>, string]>([
  ['no arms', { arms: [] }, 'empty'],
  ['an arm without rows', { arms: ['c', 't', 'u'] }, 'arm-without-rows'],
  ['an unknown arm', { arms: ['c'] }, 'unknown-arm'],
  ['an arm twice', { arms: ['c', 't', 't'] }, 'duplicate'],
  ['a name used twice', { random: ['level'] }, 'duplicate'],
  ['a factor named arm', { fixed: ['level', 'arm'] }, 'duplicate'],
  ['no random factor', { random: [] }, 'out-of-range'],
  ['three random factors', { random: ['batch', 'a', 'b'] }, 'out-of-range'],
  ['a factor that rows lack', { fixed: ['level', 'oven'] }, 'missing-level'],
  ['a factor named like a part of every object', { fixed: ['level', 'constructor'] }, 'missing-level'],
  ['a covariate that rows lack', { covariates: ['minutes'] }, 'missing-value'],
  ['an order with a level that no row has', { levelOrder: { level: ['hot', 'mild', 'cool'] } }, 'unknown-level'],
  ['an order without a level of the rows', { levelOrder: { level: ['hot'] } }, 'level-not-ordered'],
  ['an order with a level twice', { levelOrder: { level: ['hot', 'mild', 'hot'] } }, 'duplicate'],
  ['an interaction of no fixed factor', { byArm: 'batch' }, 'not-a-fixed-factor'],
])('%s is refused', (_, change, reason) => {
  expect(() => designMatrix({ rows, model: { ...model, ...change } })).toThrow(reason)
})

test('no rows, a factor of one level, a covariate that is no number, and more columns than a trial has are refused', () => {
  expect(() => designMatrix({ rows: [], model })).toThrow('empty')
  expect(() => designMatrix({ rows: rows.filter(({ factors }) => factors.level === 'hot'), model })).toThrow(
    'one-level',
  )
  expect(() => designMatrix({ rows: [...rows, row('c', '1', 'hot', NaN)], model })).toThrow('rows[4].covariates.tempC')
  const many = Array.from({ length: 101 }, (_, i) => row('c', String(i), String(i), i))
  expect(() => designMatrix({ rows: many, model: { arms: ['c'], fixed: ['level'], random: ['batch'] } })).toThrow(
    'fixed.length',
  )
})
