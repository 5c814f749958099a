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
  rows: inputs.rows.map(({ arm = 'all', batch, sample, y }) => ({
    arm,
    factors: { batch, ...(sample === undefined ? {} : { sample }) },
    y,
  })),
  model: { arms: inputs.arms, random: inputs.random },
})

// The data sets as carried by R package lme4, whose documentation prints the same variances (1764 and 2451 for the first).
describe.each(cases)('$title', (c) => checkMixedModel(c, () => questionOf(c)))

// R's figures hold as well where days are given that vary nothing: at zero such a variance changes no estimate. Batch i of
// arm j was baked on day (i + j) mod 3, an invented day that REML finds no variance between.
const withIdleDays = cases.filter(({ inputs }) => inputs.arms.length === 3)
describe.each(withIdleDays)('$title, with days that vary nothing', (c) => {
  const dayOf = new Map<string, string>()
  for (const [j, arm] of c.inputs.arms.entries()) {
    const batches = [...new Set(c.inputs.rows.filter((row) => row.arm === arm).map(({ batch }) => batch))]
    batches.forEach((batch, i) => dayOf.set(batch, String((i + j) % 3)))
  }
  const { rows, model } = questionOf(c)
  const q = {
    rows: rows.map((row) => ({ ...row, factors: { batch: row.factors.batch, block: dayOf.get(row.factors.batch)! } })),
    model: { ...model, random: ['batch', 'block'] },
  }
  checkMixedModel({ ...c, expected: { ...c.expected, boundary: true } }, () => q)
  test('the days are named', () => expect(fitMixedModel(q).atZero).toEqual(['block']))
})
test('there are two such sets', () => expect(withIdleDays).toHaveLength(2))

test('at a variance of zero no degrees of freedom are given, and the result says on what the verdict rests', () => {
  const fit = fitMixedModel(questionOf(cases.find(({ id }) => id === 'dyestuff2')!))
  expect(fit.varianceComponents[0]!.variance).toBe(0)
  expect(fit.intercept.satterthwaite).toBeNull()
  expect(fit.intercept.kenwardRoger).toBeNull()
  expect(fit.warnings).toEqual(['variance-at-zero-use-batch-means'])
})
