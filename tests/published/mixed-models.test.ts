import { describe, expect, test } from 'vitest'
import { fitMixedModel } from '@/lib/calc/mixed-model/fit-mixed-model'
import { type MixedCase, checkMixedModel } from '@/tests/support/mixed-model-figures'
import data from './data/mixed-models.json'

type Case = MixedCase & {
  id: string
  title: string
  inputs: { arms: string[]; random: string[]; rows: { arm?: string; batch: string; sample?: string; y: number }[] }
}
const cases: readonly Case[] = data

const questionOf = ({ inputs }: Case) => ({
  rows: inputs.rows.map(({ arm = 'all', batch, sample, y }) => ({ arm, factors: { batch, ...(sample === undefined ? {} : { sample }) }, y })),
  model: { arms: inputs.arms, random: inputs.random },
})

// The data sets as carried by R package lme4, whose documentation prints the same variances (1764 and 2451 for the first).
describe.each(cases)('$title', (c) => checkMixedModel(c, () => questionOf(c)))

test('at a variance of zero no degrees of freedom are given, and the result says on what the verdict rests', () => {
  const fit = fitMixedModel(questionOf(cases.find(({ id }) => id === 'dyestuff2')!))
  expect(fit.varianceComponents[0]!.variance).toBe(0)
  expect(fit.intercept.satterthwaite).toBeNull()
  expect(fit.intercept.kenwardRoger).toBeNull()
  expect(fit.warnings).toEqual(['variance-at-zero-use-batch-means'])
})
