import { readFileSync } from 'node:fs'
import path from 'node:path'
import { describe, expect, test } from 'vitest'
import { analyseTrial } from '@/lib/kitchen/evidence/analyse-trial'
import { declaredTrial, measuredBatch } from '@/tests/support/evidence-samples'
import { publishedCheck } from '@/tests/support/published-check'
import cases from './data/cake-cook-1938.json'

// Cook (1938), "Chocolate cake, I. Optimum baking temperature", thesis, Iowa State College: breaking angle in degrees,
// 3 recipes × 15 replicates × 6 baking temperatures. Data as carried by R package lme4, data set `cake`. Here the whole
// way of a trial: recipe as arm, replicate as mixing day, baking temperature as the factor within batches.
const levels = ['175', '185', '195', '205', '215', '225']
const recipes = ['A', 'B', 'C']
const rows = readFileSync(path.join(import.meta.dirname, 'data/cake-cook-1938.csv'), 'utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(','))
const angle = (recipe: string, replicate: number, level: string) =>
  Number(rows.find(([r, n, t]) => r === recipe && n === String(replicate) && t === level)![3])
const batches = Array.from({ length: 15 }, (_, i) => i + 1).flatMap((day) =>
  recipes.map((recipe, arm) => measuredBatch({ arm, day, levels, values: levels.map((level) => angle(recipe, day, level)) })),
)
const declared = declaredTrial({
  measure: { name: 'Breaking angle', unit: '°', digits: 0, direction: 'larger' },
  arms: recipes.map((name, position) => ({ position, name, plannedWaterG: null })),
  mixingDays: 15,
  factor: { name: 'Baking temperature', levels },
})
const { comparison, limits } = analyseTrial(declared, batches)
const [{ expected, source, computedWith }] = cases as [(typeof cases)[number]]
const figure = (what: string, name: keyof typeof expected, got: () => number) =>
  publishedCheck({ what, source, status: `computed with ${computedWith}`, expected: expected[name], got, tolerance: 1e-8, why: 'double precision with room for another order of summing' })

describe('the result of a trial on the cakes', () => {
  figure('recipes against batches, by batch means', 'F_arm', () => comparison!.method!.armTest.f)
  figure('p of recipes, by batch means', 'p_arm', () => comparison!.method!.armTest.p)
  figure('recipes against batches, by the split plot', 'F_arm', () => comparison!.levels!.tests!.arm.f)
  figure('baking temperature against pieces', 'F_sub', () => comparison!.levels!.tests!.level.f)
  figure('interaction', 'F_arm_sub', () => comparison!.levels!.tests!.armByLevel.f)
  figure('error of the recipes, batch means of six cakes', 'ss_whole_error', () => 6 * 28 * comparison!.method!.batchSd ** 2)

  test('means per recipe, and per recipe and temperature, are those of the raw numbers', () => {
    recipes.forEach((recipe, arm) => {
      const angles = rows.filter(([r]) => r === recipe).map(([, , , value]) => Number(value))
      expect(comparison!.arms[arm]!.mean).toBeCloseTo(angles.reduce((sum, value) => sum + value, 0) / 90, 10)
      for (const level of levels) {
        const own = rows.filter(([r, , t]) => r === recipe && t === level).map(([, , , value]) => Number(value))
        const cell = comparison!.levels!.cells.find((each) => each.arm === arm && each.level === level)
        expect(cell!.mean).toBeCloseTo(own.reduce((sum, value) => sum + value, 0) / 15, 10)
      }
    })
  })

  test('270 cakes are 45 doughs: 28 degrees of freedom, and no recipe is told from the first', () => {
    expect(comparison!.method!.df).toBe(28)
    expect(comparison!.arms.slice(1).every(({ effect }) => effect!.low! < 0 && effect!.high! > 0)).toBe(true)
    expect(limits).toEqual([])
  })

  test('a dough that misses one temperature does not count, and the levels are shown without tests', () => {
    const broken = batches.map((batch) => (batch.id === '3-1' ? { ...batch, pieces: batch.pieces.slice(1) } : batch))
    const analysis = analyseTrial(declared, broken)
    expect(analysis.uncounted.map(({ why }) => why)).toEqual(['level-missing'])
    expect(analysis.limits.map(({ code }) => code)).toEqual(['levels-not-balanced'])
    expect(analysis.comparison!.levels!.tests).toBeNull()
    expect(analysis.comparison!.method!.df).toBe(27)
  })
})
