import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { frictionOfBatch } from '@/lib/calc/temperature/friction-of-batch'
import { db } from '@/lib/db/client'
import { correctReading } from '@/lib/kitchen/readings/correct-reading'
import { logReading } from '@/lib/kitchen/readings/log-reading'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { getBatch } from '@/lib/kitchen/shifts/get-batch'
import { moveBatch } from '@/lib/kitchen/shifts/move-batch'
import { addEquipment } from '@/lib/kitchen/stores/add-equipment'
import { loadWaters } from '@/lib/kitchen/water/load-waters'
import { partsOf, waterOf } from '@/lib/kitchen/water/tell-water.input'
import { makeApprovedTrial, type ApprovedTrial } from '@/tests/support/approved-trial'
import { makeBakery, testNow, valueOf, type TestBakery } from '@/tests/support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '@/tests/support/database'

let database: FreshDatabase
let bakery: TestBakery
let mixerId: string
let trial: ApprovedTrial

const hour = 3_600_000
/** Everything that was begun lies before it, or all of it after. */
const tomorrow = { beganAt: new Date(testNow.getTime() + 24 * hour) }
const today = { beganAt: new Date(testNow.getTime() - hour) }

const addMixer = async (of: TestBakery, name: string, frictionCPerMin?: number) =>
  valueOf(
    await addEquipment.call(of.head.caller, {
      kind: 'mixer',
      name,
      note: '',
      leastG: 0,
      mostG: 20_000,
      ...(frictionCPerMin === undefined ? {} : { frictionCPerMin }),
    }),
  ).equipmentId

const read = async (of: TestBakery, from: ApprovedTrial, at: number, code: string, value: string) =>
  valueOf(
    await logReading.call(of.early.caller, {
      id: uuid(),
      batchId: from.batches[at]!.batchId,
      measureId: from.measures[code],
      repeat: 1,
      value,
      unit: '°C',
      takenAt: testNow.toISOString(),
      confirmed: true,
    }),
  )
const begin = async (of: TestBakery, from: ApprovedTrial, at: number) =>
  valueOf(
    await beginBatch.call(of.early.caller, {
      batchId: from.batches[at]!.batchId,
      seenRevision: 1,
      cleanDownDone: true,
    }),
  )
/** Begins a dough and reads all four of it. */
async function mix(of: TestBakery, from: ApprovedTrial, at: number, doughC: string, waterC = '14') {
  await begin(of, from, at)
  await read(of, from, at, 'flour-temp', '20')
  await read(of, from, at, 'room-temp', '22')
  await read(of, from, at, 'water-temp', waterC)
  await read(of, from, at, 'dough-temp', doughC)
}
const watersOf = async (of: TestBakery, from: ApprovedTrial, day = tomorrow) => {
  const found = (await loadWaters(db(), of.bakeryId, [from.trialId], day)).get(from.trialId)
  if (found?.outcome !== 'known') throw new Error(`no water: ${found?.outcome}`)
  return found
}
/** What a kg took up, from the lines of the control and what was read. */
const jPerKgOf = (from: Awaited<ReturnType<typeof watersOf>>, doughTempC: number, waterTempC = 14) =>
  frictionOfBatch({
    doughTempC,
    parts: partsOf(from.heat, 20, 22),
    bowl: null,
    waterMassG: waterOf(from.heat),
    waterTempC,
    roomHeatJ: 0,
    mixingMinutes: 10,
  }).frictionJ

beforeAll(async () => {
  database = await freshDatabase()
})
afterAll(() => database.drop())
beforeEach(async () => {
  bakery = await makeBakery(`Mill ${uuid()}`)
  mixerId = await addMixer(bakery, 'Spiral', 0.8)
  trial = await makeApprovedTrial(bakery, { batchesPerArm: 3, mixerId })
})

describe('the friction of a mixer', () => {
  it('is what stands of it under Equipment, until four doughs have all four read; then what they came to', async () => {
    const before = await watersOf(bakery, trial)
    expect(before.friction).toMatchObject({ by: 'mixer', doughs: 0, isGuess: false })
    expect(before).toMatchObject({ targetC: 26, mixMin: 10, tapTempC: 12, mixer: { key: mixerId, name: 'Spiral' } })
    // 62 of water, 100 of flour, 1.8 of salt, 1.2 of yeast, in a kg; 0.8 °C a minute for ten.
    const ofAKg = (jPerK: number) => (1000 * jPerK) / 165
    const { waterJPerK, flourJPerK, restJPerK } = before.heat
    expect(waterJPerK).toBeCloseTo(ofAKg(62 * 4.186), 0)
    expect(flourJPerK).toBeCloseTo(ofAKg(100 * 1.8), 0)
    expect(restJPerK).toBeCloseTo(ofAKg(1.8 * 0.86 + 1.2 * 3.2), 0)
    expect(before.friction.jPerKg).toBeCloseTo(8 * (waterJPerK + flourJPerK + restJPerK), 6)
    for (const at of [0, 1, 2]) await mix(bakery, trial, at, '26')
    expect((await watersOf(bakery, trial)).friction.by).toBe('mixer')
    await mix(bakery, trial, 3, '26')
    const learned = await watersOf(bakery, trial)
    expect(learned.friction).toMatchObject({ by: 'learned', doughs: 4, isGuess: false })
    expect(learned.friction.jPerKg).toBeCloseTo(jPerKgOf(learned, 26), 6)
    // Today's own are not learned from: the first of them corrects.
    expect((await watersOf(bakery, trial, today)).friction.by).toBe('mixer')
  })

  it('is learned from every trial that it mixed, and from nobody else’s mixer or bakery', async () => {
    for (const at of [0, 1, 2, 3]) await mix(bakery, trial, at, '27')
    const same = await makeApprovedTrial(bakery, { mixerId })
    expect((await watersOf(bakery, same)).friction).toMatchObject({ by: 'learned', doughs: 4 })
    const other = await makeApprovedTrial(bakery, { mixerId: await addMixer(bakery, 'Fork') })
    expect((await watersOf(bakery, other)).friction).toMatchObject({ by: 'usual', doughs: 0, isGuess: true })
    const none = await makeApprovedTrial(bakery)
    expect(await watersOf(bakery, none)).toMatchObject({
      friction: { by: 'usual', doughs: 0 },
      mixer: { key: none.trialId, name: null },
      first: null,
    })
    const away = await makeBakery(`Away ${uuid()}`)
    const theirs = await makeApprovedTrial(away, { mixerId: await addMixer(away, 'Spiral', 0.8) })
    expect((await watersOf(away, theirs)).friction.by).toBe('mixer')
    expect((await loadWaters(db(), away.bakeryId, [trial.trialId], tomorrow)).size).toBe(0)
  })

  it('is learned from the doughs of its trial where the plan names no mixer', async () => {
    const none = await makeApprovedTrial(bakery, { batchesPerArm: 2 })
    for (const at of [0, 1, 2, 3]) await mix(bakery, none, at, '25')
    expect(await watersOf(bakery, none)).toMatchObject({
      friction: { by: 'learned', doughs: 4 },
      mixer: { key: none.trialId, name: null },
    })
  })

  it('forgets a dough that is set aside, and one that misses a temperature', async () => {
    for (const at of [0, 1, 2, 3]) await mix(bakery, trial, at, '26')
    await begin(bakery, trial, 4)
    await read(bakery, trial, 4, 'dough-temp', '31')
    expect((await watersOf(bakery, trial)).friction).toMatchObject({ by: 'learned', doughs: 4 })
    const { batchId } = trial.batches[3]!
    valueOf(
      await moveBatch.call(bakery.early.caller, { batchId, seenRevision: 2, to: 'set_aside', why: 'Salt forgotten.' }),
    )
    expect((await watersOf(bakery, trial)).friction.by).toBe('mixer')
  })
})

describe('the first dough of a day', () => {
  it('is told with what it came to, as its readings stand: a corrected one counts as corrected', async () => {
    await mix(bakery, trial, 0, '27')
    await mix(bakery, trial, 1, '24')
    const { first, ...facts } = await watersOf(bakery, trial, today)
    expect(first?.code).toBe(trial.batches[0]!.code)
    expect(first!.jPerKgMin * 10).toBeCloseTo(jPerKgOf({ ...facts, first }, 27), 6)
    const wrong = await db().reading.findFirstOrThrow({
      where: {
        bakeryId: bakery.bakeryId,
        batchId: trial.batches[0]!.batchId,
        measureId: trial.measures['dough-temp']!,
      },
    })
    valueOf(
      await correctReading.call(bakery.early.caller, {
        id: uuid(),
        supersedesId: wrong.id,
        repeat: 1,
        value: '28',
        unit: '°C',
        reason: 'Read wrong',
        confirmed: true,
      }),
    )
    const after = await watersOf(bakery, trial, today)
    expect(after.first!.jPerKgMin * 10).toBeCloseTo(jPerKgOf(after, 28), 6)
    expect((await watersOf(bakery, trial, tomorrow)).first).toBeNull()
  })

  it('corrects the next one on its page at the desk, for whoever asks, until that is mixed', async () => {
    await mix(bakery, trial, 0, '27')
    await begin(bakery, trial, 1)
    const { batchId } = trial.batches[1]!
    const waterAt = async (who: 'early' | 'head') => valueOf(await getBatch.call(bakery[who].caller, { batchId })).water
    expect(await waterAt('early')).toMatchObject({ outcome: 'known', told: { missing: ['flour', 'room'] } })
    await read(bakery, trial, 1, 'flour-temp', '20')
    await read(bakery, trial, 1, 'room-temp', '22')
    const water = await waterAt('early')
    expect(water).toMatchObject({ told: { outcome: 'told', correctedBy: trial.batches[0]!.code } })
    expect(await waterAt('head')).toEqual(water)
    valueOf(await moveBatch.call(bakery.early.caller, { batchId, seenRevision: 2, to: 'in_work' }))
    expect(await waterAt('early')).toBeNull()
  })
})

describe('doughs that need waters of their own', () => {
  it('are told none: it would say which is which', async () => {
    await connected(database.superUrl, async (client) => {
      await client.query('ALTER TABLE arm_line DISABLE TRIGGER USER')
      await client.query(
        `UPDATE arm_line SET weighed_g = weighed_g / 2
         WHERE arm_id = $1 AND ingredient_id IN (SELECT id FROM ingredient WHERE kind = 'water')`,
        [trial.armIds[1]],
      )
      await client.query('ALTER TABLE arm_line ENABLE TRIGGER USER')
    })
    expect((await loadWaters(db(), bakery.bakeryId, [trial.trialId], today)).get(trial.trialId)).toEqual({
      outcome: 'waters-differ',
    })
  })
})
