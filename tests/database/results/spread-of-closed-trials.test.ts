import { afterAll, beforeAll, expect, it } from 'vitest'
import { db } from '../../../lib/db/client'
import { spreadOfClosedTrials } from '../../../lib/kitchen/results/spread-of-closed-trials'
import { loadPlanFacts } from '../../../lib/kitchen/trials/load-plan-facts'
import { makeBakery, testNow, type TestBakery } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'
import { plantTrial, type PlantedDough, type PlantedTrial } from '../../support/planted-trial'

let database: FreshDatabase
let bakery: TestBakery
beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
})
afterAll(() => database.drop())

/** Specific volumes of control and other dough on three days, each of four loaves of 400 g. */
const volumes = [
  [4, 4.4],
  [4.2, 5.2],
  [3.8, 3.6],
] as const
const doughs = volumes.flatMap((ofDay, day) =>
  ofDay.map(
    (volume, arm): PlantedDough => ({
      arm,
      day: day + 1,
      loaves: Array.from({ length: 4 }, () => ({ massG: 400, volumesMl: [400 * volume, 400 * volume] })),
    }),
  ),
)
const plant = (state: 'closed' | 'baking', more: Partial<PlantedDough>[] = []) =>
  plantTrial(bakery, {
    state,
    mixingDays: 3,
    doughs: doughs.map((dough, i) => ({ ...dough, ...more[i] })),
    at: testNow,
  })
const askedOf = async ({ trialId, measureIds }: PlantedTrial, measure = 'specific-volume') => {
  const { formulaId } = await db().trial.findFirstOrThrow({ where: { id: trialId } })
  return { bakeryId: bakery.bakeryId, formulaId, measureId: measureIds.get(measure)! }
}
const spreadOf = async (planted: PlantedTrial, measure?: string) =>
  spreadOfClosedTrials(db(), await askedOf(planted, measure))

it('is what the differences of its days scatter on logarithms, less what doughs are taken to bring', async () => {
  const planted = await plant('closed')
  const logs = volumes.map(([control, other]) => Math.log(other / control))
  const mean = logs.reduce((sum, log) => sum + log, 0) / 3
  const meanSquare = logs.reduce((sum, log) => sum + (log - mean) ** 2, 0) / 2 / 2
  const dough = 0.03 ** 2 + 0.025 ** 2 / 4
  const { sd, df, trials } = await spreadOf(planted)
  expect(sd ** 2).toBeCloseTo(meanSquare - dough, 12)
  expect(df).toBeCloseTo(sd ** 4 / (meanSquare ** 2 / 2 + dough ** 2 / 8), 9)
  expect(trials).toBe(1)
  expect((await loadPlanFacts(db(), bakery.bakeryId, planted.trialId))!.ownSpread).toEqual({ sd, df, trials })
})

it('rests on the doughs that count in the result', async () => {
  // Without the third day's control two days are left, with one degree of freedom.
  const planted = await plant('closed', [{}, {}, {}, {}, { state: 'lost', stateWhy: 'fell' }])
  const logs = volumes.slice(0, 2).map(([control, other]) => Math.log(other / control))
  const { sd } = await spreadOf(planted)
  expect(sd ** 2).toBeCloseTo((logs[0]! - logs[1]!) ** 2 / 4 - (0.03 ** 2 + 0.025 ** 2 / 4), 12)
})

it('is nothing of a trial that is open, of another measure, another formula, another bakery, or of a spoilt closing', async () => {
  const nothing = { sd: 0, df: 0, trials: 0 }
  expect(await spreadOf(await plant('baking'))).toEqual(nothing)
  const planted = await plant('closed')
  expect(await spreadOf(planted, 'loaf-volume')).toEqual(nothing)
  const asked = await askedOf(planted)
  expect((await spreadOfClosedTrials(db(), asked)).trials).toBe(1)
  const other = await makeBakery('Other Row')
  expect(await spreadOfClosedTrials(db(), { ...asked, bakeryId: other.bakeryId })).toEqual(nothing)
  await connected(database.ownerUrl, (owner) =>
    owner.query(
      `ALTER TABLE closing DISABLE TRIGGER USER;
       UPDATE closing SET text = replace(text, '400', '500'), hash = repeat('0', 64) WHERE trial_id = '${planted.trialId}';
       ALTER TABLE closing ENABLE TRIGGER USER`,
    ),
  )
  expect(await spreadOfClosedTrials(db(), asked)).toEqual(nothing)
})
