import { readFileSync } from 'node:fs'
import path from 'node:path'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { db } from '@/lib/db/client'
import { closeTrial } from '../../../lib/kitchen/results/close-trial'
import { getResult } from '@/lib/kitchen/amendments/get-result'
import { loadEvidence } from '@/lib/kitchen/results/load-evidence'
import { addMeasure } from '@/lib/kitchen/stores/add-measure'
import { importReadings } from '@/lib/kitchen/readings/import/import-readings'
import { previewImport } from '@/lib/kitchen/readings/import/preview-import'
import { decidePlan } from '@/lib/kitchen/trials/decide-plan'
import { draftTrial } from '@/lib/kitchen/trials/draft-trial'
import { proposePlan } from '@/lib/kitchen/trials/propose-plan'
import mixedCases from '../../published/data/cake-cook-1938-mixed.json'
import cases from '../../published/data/cake-cook-1938.json'
import { makeBakery, valueOf } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import { checkMixedModel } from '../../support/mixed-model-figures'
import { openTheKey } from '../../support/open-the-key'
import { publishedCheck } from '../../support/published-check'
import { makeTrialStores, trialContentOf } from '../../support/trials'

// Cook (1938), "Chocolate cake, I. Optimum baking temperature", thesis, Iowa State College: breaking angle in degrees,
// 3 recipes × 15 replicates × 6 baking temperatures. Data as carried by R package lme4, data set `cake`. Here the whole
// way of a trial by its own commands: recipe as arm, replicate as mixing day, baking temperature as the factor within
// doughs, and the file itself imported. What is in the doughs is invented; every reading is Cook's.
const bytes = readFileSync(path.join(import.meta.dirname, '../../published/data/cake-cook-1938.csv'))
const levels = ['175', '185', '195', '205', '215', '225']
const recipes = ['A', 'B', 'C']
const rows = bytes
  .toString('utf8')
  .trim()
  .split('\n')
  .slice(1)
  .map((line) => line.split(','))
const angles = (isRight: (row: readonly string[]) => boolean) =>
  rows.filter(isRight).map(([, , , angle]) => Number(angle))
const meanOf = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length

let database: FreshDatabase
let imported: { stored: number; already: number; measured: number }
let again: { stored: number; already: number; measured: number }
let result: Awaited<ReturnType<typeof bakeAndRead>>['result']
let stored: Awaited<ReturnType<typeof bakeAndRead>>['stored']
const comparison = () => result.analysis.comparison!

async function bakeAndRead() {
  const bakery = await makeBakery('Mill Row')
  const { early, head, owner } = bakery
  const stores = await makeTrialStores(bakery)
  const breakingAngle = {
    name: 'Breaking angle',
    unit: '°',
    digits: 0,
    level: 'piece',
    direction: 'larger',
    plausibleLeast: 10,
    plausibleMost: 90,
    repeats: 1,
    repeatLimit: null,
    ageLeastH: null,
    ageMostH: null,
    method: 'bent until it breaks',
  }
  const { measureId } = valueOf(await addMeasure.call(head.caller, breakingAngle))
  const arm = (name: string, value: number) => ({
    name,
    onTop: true,
    doses: [{ ingredientId: stores.ids.malt, basis: 'pct_flour', doseOf: 'product', value }],
  })
  const content = {
    ...trialContentOf(stores),
    question: 'Does another recipe bend farther?',
    measureId,
    margin: 3,
    marginUnit: 'unit',
    mixingDays: 15,
    batchesPerArm: 1,
    piecesPerBatch: 6,
    factor: { name: 'Baking temperature', levels },
    arms: [arm('recipe B', 0.3), arm('recipe C', 0.6)],
  }
  const { trialId } = valueOf(await draftTrial.call(early.caller, { content }))
  const proposed = valueOf(await proposePlan.call(early.caller, { trialId, seenRevision: 1 }))
  valueOf(
    await decidePlan.call(head.caller, {
      trialId,
      seenRevision: proposed.revision,
      planHash: proposed.planHash,
      verdict: 'approved',
      note: '',
    }),
  )

  // The file says which dough is which, so whoever brings it knows the key.
  for (const { caller } of [head, owner]) await openTheKey(caller, trialId)
  const look = {
    file: { name: 'cake-cook-1938.csv', bytes },
    day: '2026-03-02',
    keepOdd: false,
    outside: { cleanDownDone: true },
  }
  const { seen } = valueOf(
    await previewImport.call(head.caller, { trialId, look: { ...look, match: null, matched: '' } }),
  )
  expect(seen!.match!.columns.map(({ as }) => as)).toEqual(['arm', 'day', 'level', 'measure'])
  expect(seen!.armTexts).toEqual(recipes)
  // The file's recipe A is the control here, and the letters of a trial's arms begin after the control.
  const match = { ...seen!.match!, arms: recipes.map((text, position) => ({ text, arm: position })) }
  imported = valueOf(await importReadings.call(head.caller, { trialId, ...look, match }))
  again = valueOf(await importReadings.call(owner.caller, { trialId, ...look, match }))
  const { trial } = valueOf(await getResult.call(head.caller, { trialId }))
  const closing = { trialId, seenRevision: trial.revision, early: false, reason: 'The cakes were not weighed.' }
  valueOf(await closeTrial.call(head.caller, closing))
  return {
    result: valueOf(await getResult.call(early.caller, { trialId })),
    stored: await loadEvidence(db(), bakery.bakeryId, trialId),
  }
}

beforeAll(async () => {
  database = await freshDatabase()
  const read = await bakeAndRead()
  result = read.result
  stored = read.stored
}, 60_000)
afterAll(() => database.drop())

const [{ expected, source, computedWith }] = cases as [(typeof cases)[number]]
const figure = (what: string, name: keyof typeof expected, got: () => number) =>
  publishedCheck({
    what,
    source,
    status: `computed with ${computedWith}`,
    expected: expected[name],
    got,
    tolerance: 1e-8,
    why: 'double precision with room for another order of summing',
  })

describe('the result of a trial on the cakes', () => {
  test('all 270 cakes of the file come in, every dough is measured, and the file sent again brings nothing', () => {
    expect(imported).toEqual({ stored: 270, already: 0, measured: 45 })
    expect(again).toEqual({ stored: 0, already: 270, measured: 0 })
    expect(result.analysis.stage).toBe('whole')
  })

  figure('p of recipes, by the split plot', 'p_arm', () => comparison().levels!.tests!.arm.p)
  figure('recipes against batches, by the split plot', 'F_arm', () => comparison().levels!.tests!.arm.f)
  figure('baking temperature against pieces', 'F_sub', () => comparison().levels!.tests!.level.f)
  figure('interaction', 'F_arm_sub', () => comparison().levels!.tests!.armByLevel.f)
  figure(
    'error of the recipes, batch means of six cakes',
    'ss_whole_error',
    () => 6 * 28 * comparison().method!.doughSd ** 2,
  )

  test('means per recipe, and per recipe and temperature, are those of the raw numbers', () => {
    recipes.forEach((recipe, arm) => {
      expect(comparison().arms[arm]!.mean).toBeCloseTo(meanOf(angles(([r]) => r === recipe)), 10)
      for (const level of levels) {
        const cell = comparison().levels!.cells.find((each) => each.arm === arm && each.level === level)
        expect(cell!.mean).toBeCloseTo(meanOf(angles(([r, , t]) => r === recipe && t === level)), 10)
      }
    })
  })

  test('270 cakes are 45 doughs: 28 degrees of freedom, and no recipe is told from the first', () => {
    expect(comparison().method!.df).toBe(28)
    expect(
      comparison()
        .arms.slice(1)
        .every(({ effect }) => effect!.low! < 0 && effect!.high! > 0),
    ).toBe(true)
    expect(result.analysis.limits).toEqual([])
  })
})

// Each dough is a batch, with baking temperature as an additive factor within it.
describe.each(mixedCases)('the readings as they are stored: $title', (c) =>
  checkMixedModel(c, () => ({
    rows: stored.batches.flatMap(({ arm, code, pieces }) =>
      pieces.map(({ level, value }) => ({ arm: recipes[arm]!, factors: { batch: code, temp: level! }, y: value! })),
    ),
    model: { arms: c.inputs.arms, fixed: c.inputs.fixed, random: c.inputs.random },
  })),
)
