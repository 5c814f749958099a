import { readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { splitPlot } from '@/lib/calc/analysis/split-plot'
import { checkMixedModel } from '@/tests/support/mixed-model-figures'
import { checkSplitPlot } from '@/tests/support/split-plot-figures'
import mixedCases from './data/cake-cook-1938-mixed.json'
import cases from './data/cake-cook-1938.json'

// Cook (1938), "Chocolate cake, I. Optimum baking temperature", thesis, Iowa State College: breaking angle in degrees,
// 3 recipes × 15 replicates × 6 baking temperatures. Data as carried by R package lme4, data set `cake`.
const rows = readFileSync(path.join(import.meta.dirname, 'data/cake-cook-1938.csv'), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => {
    const [recipe, replicate, temperature, angle] = line.split(',')
    return { arm: recipe!, block: replicate!, level: temperature!, y: Number(angle) }
  })
const q = { rows, arms: ['A', 'B', 'C'], levels: ['175', '185', '195', '205', '215', '225'] }

test('the data are whole: 270 cakes', () => {
  expect(rows).toHaveLength(270)
})

describe.each(cases)('$title', (c) => checkSplitPlot(c, q))

// Each replicate of a recipe is a mix of its own: the batch, with temperature as an additive factor within it.
describe.each(mixedCases)('$title', (c) =>
  checkMixedModel(c, () => ({
    rows: rows.map(({ arm, block, level, y }) => ({ arm, factors: { batch: `${arm}:${block}`, temp: level }, y })),
    model: { arms: c.inputs.arms, fixed: c.inputs.fixed, random: c.inputs.random },
  })),
)

test('recipes do not differ, hotter cakes bend farther', () => {
  const { levelMeans, anova } = splitPlot(q)
  expect(levelMeans.at(-1)!.mean).toBeGreaterThan(levelMeans[0]!.mean)
  expect(anova[1].p!).toBeGreaterThan(0.05)
})
