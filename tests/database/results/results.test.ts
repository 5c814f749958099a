import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { closeTrial } from '@/lib/kitchen/results/close-trial'
import { getResult } from '@/lib/kitchen/amendments/get-result'
import { getDesk } from '@/lib/kitchen/people/get-desk'
import { makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import {
  plantTrial,
  plantedMasses,
  plantedPrices,
  type PlantedDough,
  type PlantedTrial,
} from '../../support/planted-trial'

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
  neighbour = await makeBakery('Next Door')
})
afterAll(() => database.drop())

/** Volumes in mL by dough: three days, control and arm, two loaves of 400 g; the second reading is 4 mL larger. */
const volumes = [
  { control: [1600, 1620], arm: [1760, 1750] },
  { control: [1580, 1590], arm: [1745, 1735] },
  { control: [1630, 1640], arm: [1770, 1790] },
]
const loaves = (volumesMl: readonly number[]) =>
  volumesMl.map((volume) => ({ massG: 400, volumesMl: [volume, volume + 4] as const }))
const wholeTrial: PlantedDough[] = volumes.flatMap(({ control, arm }, i) => [
  { arm: 0, day: i + 1, loaves: loaves(control), doughTempC: 25 },
  { arm: 1, day: i + 1, loaves: loaves(arm), doughTempC: 26.5, piecesGood: i === 0 ? 3 : 4 },
])
/** The costs in an answer, which whoever sees them got. */
const costsOf = (result: Awaited<ReturnType<typeof getResult.call>>) => valueOf(result).costs!
const plant = (doughs: readonly PlantedDough[], state: 'closed' | 'baking' = 'closed') =>
  plantTrial(bakery, { state, mixingDays: 3, doughs, at: testNow })

describe('a dough that was read and taken out', () => {
  it('is shown with and without: the first as if nobody had taken it out', async () => {
    const outAt = (...at: number[]) =>
      wholeTrial.map((dough, i) =>
        at.includes(i) ? { ...dough, state: 'set_aside' as const, stateWhy: 'no salt' } : dough,
      )
    const resultOf = async (doughs: readonly PlantedDough[], state: 'closed' | 'baking' = 'closed') => {
      const { trialId } = await plant(doughs, state)
      return valueOf(await getResult.call(bakery.early.caller, { trialId }))
    }
    const figures = (comparison: Awaited<ReturnType<typeof resultOf>>['analysis']['comparison']) =>
      comparison?.arms.map(({ batches, mean, effect, verdict }) => ({ batches, mean, effect, verdict }))
    const whole = await resultOf(wholeTrial)
    expect(whole.withTakenOut).toBeNull()
    const { withTakenOut, analysis, batches } = await resultOf(outAt(3))
    expect(withTakenOut!.codes).toEqual([batches[3]!.code])
    expect(figures(withTakenOut!.comparison)).toEqual(figures(whole.analysis.comparison))
    expect(analysis.comparison!.arms[1]!.batches).toBe(2)
    // Nothing is compared before the readings are closed, with the dough or without.
    expect((await resultOf(outAt(3), 'baking')).withTakenOut).toBeNull()
    const unread = outAt(3).map((dough, i) => (i === 3 ? { ...dough, loaves: [] } : dough))
    expect((await resultOf(unread)).withTakenOut).toBeNull()
  })
})

describe('the result of a trial', () => {
  it('has the figures that follow from the raw numbers', async () => {
    const { trialId } = await plant(wholeTrial)
    const { analysis } = valueOf(await getResult.call(bakery.early.caller, { trialId }))
    const doughMean = (of: readonly number[]) => of.reduce((sum, volume) => sum + (volume + 2) / 400, 0) / of.length
    const differences = volumes.map(({ control, arm }) => doughMean(arm) - doughMean(control))
    const mean = differences.reduce((sum, each) => sum + each, 0) / 3
    const [, arm] = analysis.comparison!.arms
    expect(arm!.effect!.estimate).toBeCloseTo(mean, 12)
    // One arm in complete blocks is the paired t-test, of logarithms for a margin in %: t for 95 % and 2 degrees of
    // freedom is 4.30265 (any table of t).
    const logs = volumes.map(({ control, arm: of }) => Math.log(doughMean(of) / doughMean(control)))
    const log = logs.reduce((sum, each) => sum + each, 0) / 3
    const sd = Math.sqrt(logs.reduce((sum, each) => sum + (each - log) ** 2, 0) / 2)
    expect(arm!.effect!.pct).toBeCloseTo(100 * (Math.exp(log) - 1), 10)
    expect(arm!.effect!.highPct).toBeCloseTo(100 * (Math.exp(log + (4.30265 * sd) / Math.sqrt(3)) - 1), 4)
    expect(analysis.comparison!.worthwhile).toBe(4)
    expect(arm).toMatchObject({ standing: 'compared', verdict: { verdict: 'better' }, doubts: ['dough-temp'] })
  })

  it('takes the correction of a reading and not what it corrects, also where somebody looked before', async () => {
    const { trialId, batchIds, measureIds } = await plant(wholeTrial, 'baking')
    const looked = valueOf(await getResult.call(bakery.early.caller, { trialId }))
    const key = {
      bakeryId: bakery.bakeryId,
      trialId,
      batchId: batchIds.get('1-1')!,
      measureId: measureIds.get('loaf-mass')!,
      piece: 1,
    }
    const wrong = await db().reading.findFirstOrThrow({ where: key, select: { id: true } })
    await db().reading.create({
      data: {
        ...key,
        id: uuid(),
        repeat: 1,
        value: 410,
        valueEntered: '410',
        unitEntered: 'g',
        personId: bakery.head.personId,
        takenAt: testNow,
        receivedAt: testNow,
        contentHash: 'a'.repeat(64),
        supersedesId: wrong.id,
        reason: 'misread',
      },
    })
    const { batches } = valueOf(await getResult.call(bakery.early.caller, { trialId }))
    const meanIn = (of: typeof batches) => of.find(({ id }) => id === key.batchId)!.mean
    expect(meanIn(looked.batches)).toBeCloseTo((1762 / 400 + 1752 / 400) / 2, 12)
    expect(meanIn(batches)).toBeCloseTo((1762 / 410 + 1752 / 400) / 2, 12)
  })

  it.each([
    ['in-progress', 1, wholeTrial.map((dough, i) => (i === 5 ? { ...dough, state: 'baked' as const } : dough))],
    ['all-in', 0, wholeTrial],
  ])('says nothing of any arm before the readings are closed: %s', async (stage, open, doughs) => {
    const { trialId } = await plant(doughs, 'baking')
    const result = valueOf(await getResult.call(bakery.early.caller, { trialId }))
    expect(result.analysis).toMatchObject({ stage, comparison: null, limits: [], open })
    // What was read stands under the doughs' codes.
    expect(result.batches.every(({ arm, uncounted }) => arm === null && uncounted === null)).toBe(true)
    expect(result.batches.map(({ mean }) => mean !== null)).toEqual(doughs.map(() => true))
    expect(result).toMatchObject({ mixed: [], outOfOrderDays: [] })
    const costs = costsOf(await getResult.call(bakery.owner.caller, { trialId }))
    expect(costs.arms.every(({ perKg, good, perLitre }) => perKg === null && good === null && perLitre === null)).toBe(
      true,
    )
    expect(costs.arms[0]!.perLoaf).toBe('0.207925')
  })

  it('names what went wrong, and leaves a day without its control out', async () => {
    const { trialId } = await plant(
      wholeTrial.map((dough, i) =>
        i === 4 ? { ...dough, state: 'lost' as const, stateWhy: 'dropped the tins' } : dough,
      ),
    )
    const { analysis, batches } = valueOf(await getResult.call(bakery.early.caller, { trialId }))
    expect(batches.map(({ uncounted }) => uncounted)).toEqual([null, null, null, null, 'lost', 'day-without-control'])
    expect(batches[4]!.stateWhy).toBe('dropped the tins')
    expect(analysis.limits.map(({ code }) => code)).toEqual(['fewer-days', 'bad-dough-not-told'])
  })
})

describe('what it costs and gives', () => {
  it('follows from the masses and the prices of the day', async () => {
    const { trialId } = await plant(wholeTrial)
    const costs = costsOf(await getResult.call(bakery.head.caller, { trialId }))
    // Control: 1,000 g at 0.8317 a kg, in 1,600 g of dough for 4 loaves of 400 g. Arm: 994 g of flour and 6 g of malt.
    const armDough =
      (plantedMasses[1].flour * Number(plantedPrices.flour) + plantedMasses[1].malt * Number(plantedPrices.malt)) / 1000
    expect(costs).toMatchObject({ day: '2026-03-02', currency: 'EUR', latestPriceFrom: '2026-01-01' })
    expect(costs.arms[0]).toMatchObject({ perBatch: '0.8317', perLoaf: '0.207925', unpriced: [] })
    expect(Number(costs.arms[1]!.perBatch)).toBeCloseTo(armDough, 12)
    expect(Number(costs.arms[1]!.perLoaf)).toBeCloseTo(armDough / 4, 12)
    expect(Number(costs.arms[1]!.differencePerLoaf)).toBeCloseTo(armDough / 4 - 0.207925, 12)
    expect(Number(costs.arms[1]!.perKg)).toBeCloseTo(armDough / 4 / 0.4, 12)
    // A loaf that was spoilt is counted, and makes no other one dearer.
    expect(costs.arms[1]!.good).toEqual({ pieces: 11, batches: 3 })
  })

  describe('with the water that was really taken', () => {
    const took = (waterG: readonly (number | undefined)[]) =>
      wholeTrial.map((dough) => ({ ...dough, waterG: dough.arm === 0 ? 600 : waterG[dough.day - 1] }))
    /** Water at 2 euro a kg, so that it shows in the cost. */
    async function plantPriced(doughs: readonly PlantedDough[]) {
      const { trialId } = await plant(doughs)
      const { ingredientId } = await db().armLine.findFirstOrThrow({
        where: { arm: { trialId }, ingredient: { kind: 'water' } },
        select: { ingredientId: true },
      })
      await db().price.create({
        data: {
          bakeryId: bakery.bakeryId,
          id: uuid(),
          ingredientId,
          holdsFrom: new Date('2026-01-01'),
          packMassG: 1000,
          packPrice: '2',
          currency: 'EUR',
          supplier: 'Spring',
          enteredById: bakery.head.personId,
          enteredAt: testNow,
        },
      })
      return trialId
    }
    const dry =
      (plantedMasses[1].flour * Number(plantedPrices.flour) + plantedMasses[1].malt * Number(plantedPrices.malt)) / 1000

    it('costs that water and says its share of the flour and the yield: 630 g on average where 600 were planned', async () => {
      const trialId = await plantPriced(took([620, 630, 640]))
      const result = await getResult.call(bakery.head.caller, { trialId })
      expect(Number(costsOf(result).arms[1]!.perBatch)).toBeCloseTo(dry + 2 * 0.63, 12)
      expect(Number(costsOf(result).arms[0]!.perBatch)).toBeCloseTo(Number(plantedPrices.flour) + 2 * 0.6, 12)
      const [control, arm] = valueOf(result).mixed
      expect(control).toMatchObject({ waterTakenG: 600, hydrationPct: { planned: 60, taken: 60 } })
      expect(arm).toMatchObject({ waterTakenG: 630 })
      expect(arm!.hydrationPct!.taken).toBeCloseTo(63000 / 994, 10)
      expect(arm!.hydrationPct!.planned).toBeCloseTo(60000 / 994, 10)
      expect(arm!.doughYield!.taken).toBeCloseTo(163000 / 994, 10)
      const water = valueOf(result).analysis.comparison!.conditions.find(({ code }) => code === 'water-added')
      expect(water!.arms[1]).toMatchObject({ mean: 630, difference: 30, isNotable: true })
    })

    it('goes by the plan where one dough has none in the book', async () => {
      const result = await getResult.call(bakery.head.caller, {
        trialId: await plantPriced(took([620, undefined, 640])),
      })
      expect(Number(costsOf(result).arms[1]!.perBatch)).toBeCloseTo(dry + 2 * 0.6, 12)
      expect(valueOf(result).mixed[1]).toMatchObject({
        waterTakenG: null,
        hydrationPct: { taken: null },
        doughYield: { taken: null },
      })
    })
  })

  it('takes the prices of the day asked about, and names what had none', async () => {
    const { trialId } = await plant(wholeTrial)
    const costs = costsOf(await getResult.call(bakery.owner.caller, { trialId, pricesOn: '2025-12-31' }))
    expect(costs.arms.map(({ unpriced }) => unpriced.length)).toEqual([1, 2])
    expect(
      costs.arms.every(({ perBatch, perLoaf, perKg }) => perBatch === null && perLoaf === null && perKg === null),
    ).toBe(true)
    expect(refusalOf(await getResult.call(bakery.owner.caller, { trialId, pricesOn: '2026-02-30' }))).toBe(
      'invalid pricesOn:wrong-form',
    )
  })

  it('is not for a shift baker, and no figure of it is in what they get', async () => {
    const { trialId } = await plant(wholeTrial)
    const { costs, ...result } = valueOf(await getResult.call(bakery.early.caller, { trialId }))
    expect(costs).toBeNull()
    expect(valueOf(await getDesk.call(bakery.early.caller, {})).seesCosts).toBe(false)
    expect(valueOf(await getDesk.call(bakery.owner.caller, {})).seesCosts).toBe(true)
    const leaves: unknown[] = []
    const names: string[] = []
    const walk = (value: unknown): void => {
      if (Array.isArray(value)) value.forEach(walk)
      else if (value !== null && typeof value === 'object' && !(value instanceof Date)) {
        names.push(...Object.keys(value))
        Object.values(value).forEach(walk)
      } else leaves.push(value)
    }
    walk(result)
    const planted = [...Object.values(plantedPrices), '0.207925', '0.8733', 'EUR']
    expect(leaves.filter((leaf) => planted.some((figure) => String(leaf).includes(figure)))).toEqual([])
    expect(names.filter((name) => /price|cost|minor|currency|perKg/i.test(name))).toEqual([])
  })
})

describe('ending the baking', () => {
  const open = wholeTrial.map((dough, i) => (i === 5 ? { ...dough, state: 'in_work' as const } : dough))
  const asked = (trialId: string, change: object = {}) => ({
    trialId,
    seenRevision: 1,
    early: false,
    reason: '',
    ...change,
  })
  const read = async (
    { trialId, batchIds, measureIds }: PlantedTrial,
    dough: string,
    code: string,
    value: number,
    piece: number | null = null,
    repeat = 1,
  ) => {
    const batchId = batchIds.get(dough)!
    await db().reading.create({
      data: {
        bakeryId: bakery.bakeryId,
        id: uuid(),
        trialId,
        batchId,
        measureId: measureIds.get(code)!,
        piece,
        repeat,
        value,
        valueEntered: String(value),
        unitEntered: 'g',
        personId: bakery.head.personId,
        takenAt: testNow,
        receivedAt: testNow,
        contentHash: 'a'.repeat(64),
      },
    })
  }
  /** Two loaves are planted of the four that the plan reads; here the others and what else is read of a dough are as well. */
  const makeWhole = async (planted: PlantedTrial) => {
    for (const dough of planted.batchIds.keys()) {
      await read(planted, dough, 'water-added', 600)
      await read(planted, dough, 'proof-time', 3600)
      for (const piece of [3, 4]) {
        await read(planted, dough, 'loaf-mass', 400, piece)
        for (const repeat of [1, 2]) await read(planted, dough, 'loaf-volume', 1600, piece, repeat)
      }
    }
  }

  it('closes a trial whose doughs are all in, once', async () => {
    const planted = await plant(wholeTrial, 'baking')
    const { trialId } = planted
    await makeWhole(planted)
    expect(refusalOf(await closeTrial.call(bakery.early.caller, asked(trialId)))).toBe('not-allowed')
    expect(refusalOf(await closeTrial.call(bakery.head.caller, asked(trialId, { seenRevision: 2 })))).toBe(
      'stale-moved-on',
    )
    const both = await Promise.all([1, 2].map(() => closeTrial.call(bakery.head.caller, asked(trialId))))
    expect(both.filter(({ ok }) => ok)).toHaveLength(1)
    expect(
      await db().trial.findFirst({
        where: { id: trialId },
        select: { state: true, closedAt: true, closedWhy: true, revision: true },
      }),
    ).toEqual({ state: 'closed', closedAt: testNow, closedWhy: null, revision: 2 })
    const entry = await db().auditEntry.findFirstOrThrow({
      where: { bakeryId: bakery.bakeryId, targetId: trialId, action: 'results.close-trial' },
      select: { entryText: true },
    })
    const closing = await db().closing.findFirstOrThrow({ where: { trialId }, select: { hash: true } })
    expect(JSON.parse(entry.entryText)).toMatchObject({
      before: 'baking',
      after: { state: 'closed', closing: closing.hash },
    })
    expect(refusalOf(await closeTrial.call(bakery.owner.caller, asked(trialId, { seenRevision: 2 })))).toBe('stale')
  })

  it('asks for a reason while something is missing, odd or not settled, lists it in the record, and the result names it', async () => {
    const planted = await plant(
      wholeTrial.map((dough, i) => (i === 1 ? { ...dough, doughTempC: 60 } : dough)),
      'baking',
    )
    const { trialId } = planted
    await makeWhole(planted)
    await db().batch.update({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: planted.batchIds.get('2-0')! } },
      data: { piecesMade: 3, piecesGood: 3 },
    })
    await read(planted, '3-1', 'dough-mass', 470, 1, 1)
    await read(planted, '3-1', 'dough-mass', 520, 1, 2)
    const named = async () =>
      valueOf(await getResult.call(bakery.early.caller, { trialId })).gaps.map(
        ({ code, gaps }) => `${code} ${gaps.map(({ kind }) => kind).join(' ')}`,
      )
    expect(await named()).toEqual(['308 outside', '315 fewer-pieces', '336 unsettled'])

    const refused = await closeTrial.call(bakery.head.caller, asked(trialId))
    expect(refusalOf(refused)).toBe('gaps-without-reason reason:missing')
    expect(refused).toMatchObject({ refusal: { facts: { count: 3 } } })
    expect(refusalOf(await closeTrial.call(bakery.head.caller, asked(trialId, { reason: ' \n ' })))).toBe(
      'gaps-without-reason reason:missing',
    )
    expect(
      valueOf(await closeTrial.call(bakery.head.caller, asked(trialId, { reason: 'The probe was broken.' }))),
    ).toEqual({ state: 'closed' })
    const entry = await db().auditEntry.findFirstOrThrow({
      where: { bakeryId: bakery.bakeryId, targetId: trialId, action: 'results.close-trial' },
      select: { entryText: true },
    })
    expect(JSON.parse(entry.entryText)).toMatchObject({
      reason: 'The probe was broken.',
      after: {
        state: 'closed',
        gaps: [
          { dough: '308', gaps: ['Dough temperature: 60 °C, outside 10 to 40'] },
          { dough: '315', gaps: ['pieces made: 3 of 4'] },
          { dough: '336', gaps: ['Dough weight of piece 1: not settled'] },
        ],
      },
    })
    expect(await named()).toHaveLength(3)
  })

  it('refuses while a dough is open, unless it is stopped early with a reason; then it is an indication', async () => {
    const { trialId } = await plant(open, 'baking')
    expect(await closeTrial.call(bakery.head.caller, asked(trialId))).toMatchObject({
      ok: false,
      refusal: { code: 'doughs-open', facts: { count: 1 } },
    })
    expect(refusalOf(await closeTrial.call(bakery.head.caller, asked(trialId, { early: true, reason: '  ' })))).toBe(
      'invalid reason:missing',
    )
    expect(
      valueOf(
        await closeTrial.call(bakery.head.caller, asked(trialId, { early: true, reason: 'The oven is broken.' })),
      ),
    ).toEqual({ state: 'stopped' })
    const { analysis, trial } = valueOf(await getResult.call(bakery.early.caller, { trialId }))
    expect(trial).toMatchObject({ state: 'stopped', closedWhy: 'The oven is broken.' })
    expect(analysis).toMatchObject({ stage: 'stopped-early', comparison: { isIndication: true } })
    expect(analysis.comparison!.arms.every(({ verdict }) => verdict === null)).toBe(true)
  })

  it('is a plain end when nothing was open any more', async () => {
    const { trialId } = await plant(wholeTrial, 'baking')
    expect(
      valueOf(await closeTrial.call(bakery.head.caller, asked(trialId, { early: true, reason: 'Enough.' }))),
    ).toEqual({ state: 'closed' })
  })

  it('is not for a trial that is not being baked', async () => {
    const { trialId } = await plant(wholeTrial)
    expect(refusalOf(await closeTrial.call(bakery.head.caller, asked(trialId)))).toBe('stale-moved-on')
  })
})

describe('the neighbour', () => {
  it('finds nothing, as if there were nothing', async () => {
    const { trialId } = await plant(wholeTrial, 'baking')
    for (const id of [trialId, uuid()]) {
      expect(refusalOf(await getResult.call(neighbour.owner.caller, { trialId: id }))).toBe('not-found')
      expect(
        refusalOf(
          await closeTrial.call(neighbour.owner.caller, { trialId: id, seenRevision: 1, early: false, reason: '' }),
        ),
      ).toBe('not-found')
    }
    expect((await db().trial.findFirst({ where: { id: trialId }, select: { state: true } }))!.state).toBe('baking')
  })
})
