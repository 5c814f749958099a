import { expect, test } from 'vitest'
import { designMatrix } from '@/lib/calc/mixed-model/design-matrix'
import { termContrasts } from '@/lib/calc/mixed-model/term-contrasts'
import type { MixedModel, MixedRow } from '@/lib/calc/mixed-model/types'

const means: Record<string, number> = { 'c hot': 3, 'c mild': 5, 't hot': 10, 't mild': 20 }
const rows = Object.keys(means).flatMap((cell, i): MixedRow[] => {
  const [arm, level] = cell.split(' ')
  return [{ arm: arm!, factors: { level: level!, batch: arm! }, covariates: { tempC: 20 + i * i }, y: 0 }]
})
const dot = (a: readonly number[], b: readonly number[]) => a.reduce((sum, value, i) => sum + value * b[i]!, 0)

test('with an interaction arms are averaged over levels and levels over arms', () => {
  const model: MixedModel = { arms: ['c', 't'], fixed: ['level'], byArm: 'level', random: ['batch'] }
  const of = termContrasts(designMatrix({ rows, model }), 'level')
  // coefficients that give the four means: control hot, mild less hot, treated less control at hot, the rest
  const beta = [3, 2, 7, 8]
  expect(dot(of.intercept, beta)).toBe(3)
  expect(of.armMeans.map(({ weights }) => dot(weights, beta))).toEqual([4, 15])
  expect(of.differences.map(({ weights }) => dot(weights, beta))).toEqual([11])
  const terms = Object.fromEntries(of.terms.map(({ term, weights }) => [term, weights.map((row) => dot(row, beta))]))
  expect(terms).toEqual({ level: [6], arm: [11], 'arm-by-level': [8] })
})

test('without one they are the coefficients; the intercept is at covariate 0 and the means at its mean', () => {
  const model: MixedModel = { arms: ['c', 't'], fixed: ['level'], covariates: ['tempC'], random: ['batch'] }
  const of = termContrasts(designMatrix({ rows, model }))
  const beta = [100, 4, 2, 6]
  expect(dot(of.intercept, beta)).toBe(100 - 2 * 23.5)
  expect(of.armMeans.map(({ weights }) => dot(weights, beta))).toEqual([102, 108])
  expect(of.terms.map(({ term, weights }) => [term, weights])).toEqual([
    ['level', [[0, 1, 0, 0]]],
    ['tempC', [[0, 0, 1, 0]]],
    ['arm', [[0, 0, 0, 1]]],
  ])
})

test('one arm alone has a mean and no differences', () => {
  const of = termContrasts(designMatrix({ rows: rows.slice(0, 2), model: { arms: ['c'], random: ['batch'] } }))
  expect(of).toEqual({ intercept: [1], armMeans: [{ arm: 'c', weights: [1] }], differences: [], terms: [] })
})
