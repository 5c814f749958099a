import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { logReading } from '@/lib/kitchen/readings/log-reading'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { countPieces } from '@/lib/kitchen/shifts/count-pieces'
import { getReadingLog } from '@/lib/kitchen/readings/get-reading-log'
import { getBatch } from '@/lib/kitchen/shifts/get-batch'
import { getShift } from '@/lib/kitchen/shifts/get-shift'
import { moveBatch } from '@/lib/kitchen/shifts/move-batch'
import { makeApprovedTrial, type ApprovedTrial } from '../../support/approved-trial'
import { makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery
let trial: ApprovedTrial

beforeAll(async () => {
  database = await freshDatabase()
  neighbour = await makeBakery('Next Door')
})
afterAll(() => database.drop())
beforeEach(async () => {
  bakery = await makeBakery('Mill Row')
  trial = await makeApprovedTrial(bakery, { days: 2 })
})

const batchAt = (at: number) => trial.batches[at]!.batchId
const begin = (at: number, more: Record<string, unknown> = {}, who = bakery.early) =>
  beginBatch.call(who.caller, { batchId: batchAt(at), seenRevision: 1, cleanDownDone: false, ...more })
const move = (at: number, seenRevision: number, to: string, why?: string) =>
  moveBatch.call(bakery.early.caller, { batchId: batchAt(at), seenRevision, to, ...(why && { why }) })
const rowOf = (at: number) =>
  db().batch.findUniqueOrThrow({ where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: batchAt(at) } } })
const stateOfTrial = async () =>
  (await db().trial.findUniqueOrThrow({ where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: trial.trialId } } }))
    .state
const setTrial = (state: 'closed' | 'stopped') =>
  db().trial.update({ where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: trial.trialId } }, data: { state } })
const lastEntry = async () =>
  JSON.parse(
    (await db().auditEntry.findFirstOrThrow({ where: { bakeryId: bakery.bakeryId }, orderBy: { number: 'desc' } }))
      .entryText,
  ) as Record<string, unknown>

describe('beginning a batch', () => {
  it('begins the trial with the first, and stands in the record', async () => {
    expect(await stateOfTrial()).toBe('approved')
    valueOf(await begin(0))
    expect(await stateOfTrial()).toBe('baking')
    expect(await rowOf(0)).toMatchObject({ state: 'weighing', begunAt: testNow, revision: 2 })
    expect(await lastEntry()).toMatchObject({
      action: 'shifts.begin-batch',
      target: batchAt(0),
      before: 'waiting',
      after: { state: 'weighing', trialBegins: true },
    })
    valueOf(await begin(1))
    expect(await lastEntry()).toMatchObject({ after: { trialBegins: false } })
  })

  it('is done by one of two who tap at the same moment', async () => {
    const both = await Promise.all([begin(0), begin(0, {}, bakery.late)])
    expect(both.filter(({ ok }) => ok)).toHaveLength(1)
    expect(refusalOf(both.find(({ ok }) => !ok)!)).toMatch(/^stale/)
    expect((await rowOf(0)).revision).toBe(2)
  })

  it('before its turn needs a reason, which is kept', async () => {
    const early = await begin(1)
    expect(refusalOf(early)).toBe('before-its-turn swapWhy:missing')
    expect(early).toMatchObject({ refusal: { facts: { code: trial.batches[0]!.code } } })
    valueOf(await begin(1, { swapWhy: 'flour for the first is late' }))
    expect(await lastEntry()).toMatchObject({ reason: 'flour for the first is late' })
  })

  it('waits for a clean-down that the plan asks for', async () => {
    valueOf(await begin(0))
    valueOf(await begin(1))
    expect(refusalOf(await begin(2))).toBe('clean-down-first cleanDownDone:clean-down-needed')
    expect((await rowOf(2)).state).toBe('waiting')
    valueOf(await begin(2, { cleanDownDone: true }))
    expect(await lastEntry()).toMatchObject({ after: { cleanDown: 'done' } })
  })

  it('waits for a clean-down when batches were swapped and milk came first', async () => {
    valueOf(await begin(1, { swapWhy: 'swapped' }))
    expect(valueOf(await getBatch.call(bakery.early.caller, { batchId: batchAt(0) })).cleanDownFirst).toBe(true)
    expect(refusalOf(await begin(0))).toContain('clean-down-first')
    valueOf(await begin(0, { cleanDownDone: true }))
  })

  it('goes past a batch that is not baked, and is not for one', async () => {
    valueOf(await move(0, 1, 'not_baked', 'no flour'))
    valueOf(await begin(1))
    expect(refusalOf(await begin(0, { seenRevision: 2 }))).toBe('stale')
  })

  it('is refused on a trial that was stopped', async () => {
    await setTrial('stopped')
    expect(refusalOf(await begin(0))).toBe('trial-stopped')
  })

  it('is refused on a trial that is closed, and next door', async () => {
    await setTrial('closed')
    expect(refusalOf(await begin(0))).toBe('trial-closed')
    expect(refusalOf(await begin(0, {}, neighbour.owner))).toBe('not-found')
  })
})

describe('moving a batch', () => {
  it('goes step by step to measured', async () => {
    valueOf(await begin(0))
    expect(refusalOf(await move(0, 2, 'baked'))).toBe('not-the-next-step')
    valueOf(await move(0, 2, 'in_work'))
    valueOf(await move(0, 3, 'baked'))
    expect((await rowOf(0)).doneAt).toBeNull()
    valueOf(await move(0, 4, 'measured', 'the scale broke'))
    expect(await rowOf(0)).toMatchObject({ state: 'measured', doneAt: testNow, revision: 5 })
    expect(await lastEntry()).toMatchObject({
      action: 'shifts.move-batch',
      before: 'baked',
      after: { state: 'measured' },
    })
    expect(refusalOf(await move(0, 5, 'lost', 'why'))).toBe('not-the-next-step')
  })

  it('is measured for a reason only while something is missing, odd or not settled, and the record lists it', async () => {
    valueOf(await begin(0))
    valueOf(await move(0, 2, 'in_work'))
    valueOf(await move(0, 3, 'baked'))
    const log = async (code: string, value: string, unit: string, place: object = {}) =>
      valueOf(
        await logReading.call(bakery.early.caller, {
          id: uuid(),
          batchId: batchAt(0),
          measureId: trial.measures[code],
          repeat: 1,
          value,
          unit,
          takenAt: testNow.toISOString(),
          ...place,
        }),
      )
    await log('water-added', '721', 'g')
    await log('proof-time', '55', 'min')
    for (const piece of [1, 2, 3, 4]) {
      if (piece > 1) await log('loaf-mass', '420', 'g', { piece })
      for (const repeat of [1, 2])
        await log('loaf-volume', piece === 2 && repeat === 2 ? '1700' : '1900', 'mL', { piece, repeat })
    }
    await log('dough-temp', '60', '°C', { confirmed: true })
    const refused = await move(0, 4, 'measured')
    expect(refusalOf(refused)).toBe('gaps-without-reason why:missing')
    expect(refused).toMatchObject({ refusal: { facts: { count: 3 } } })
    expect(refusalOf(await move(0, 4, 'measured', '   '))).toMatch(/^invalid why/)
    expect((await rowOf(0)).state).toBe('baked')
    valueOf(await move(0, 4, 'measured', 'the first loaf was eaten'))
    expect(await rowOf(0)).toMatchObject({ state: 'measured', stateWhy: 'the first loaf was eaten' })
    expect(await lastEntry()).toMatchObject({
      reason: 'the first loaf was eaten',
      after: {
        gaps: [
          'Loaf weight: 3 of 4 read',
          'Dough temperature: 60 °C, outside 10 to 40',
          'Loaf volume of piece 2: not settled',
        ],
      },
    })
  })

  it('is not made whole by a count of no pieces', async () => {
    valueOf(await begin(0))
    valueOf(await move(0, 2, 'in_work'))
    valueOf(await move(0, 3, 'baked'))
    valueOf(
      await countPieces.call(bakery.early.caller, {
        batchId: batchAt(0),
        seenRevision: 4,
        piecesMade: 0,
        piecesGood: 0,
      }),
    )
    for (const [code, value, unit] of [
      ['water-added', '721', 'g'],
      ['dough-temp', '26', '°C'],
      ['proof-time', '55', 'min'],
    ] as const) {
      valueOf(
        await logReading.call(bakery.early.caller, {
          id: uuid(),
          batchId: batchAt(0),
          measureId: trial.measures[code],
          repeat: 1,
          value,
          unit,
          takenAt: testNow.toISOString(),
        }),
      )
    }
    const refused = await move(0, 5, 'measured')
    expect(refused).toMatchObject({ refusal: { code: 'gaps-without-reason', facts: { count: 1 } } })
  })

  it('does not begin a batch', async () => {
    expect(refusalOf(await move(0, 1, 'in_work'))).toBe('not-the-next-step')
    expect(refusalOf(await move(0, 1, 'weighing'))).toBe('invalid to:wrong-form')
  })

  it('takes one out with a reason, from wherever it is', async () => {
    valueOf(await begin(0))
    expect(refusalOf(await move(0, 2, 'lost'))).toBe('invalid why:missing')
    valueOf(await move(0, 2, 'lost', 'the bowl fell'))
    expect(await rowOf(0)).toMatchObject({ state: 'lost', stateWhy: 'the bowl fell', doneAt: testNow })
    expect(await lastEntry()).toMatchObject({ reason: 'the bowl fell' })
    expect(refusalOf(await move(0, 3, 'set_aside', 'again'))).toBe('not-the-next-step')
  })

  it('tells a second person who was first', async () => {
    valueOf(await begin(0))
    valueOf(await move(0, 2, 'in_work'))
    const second = await moveBatch.call(bakery.late.caller, { batchId: batchAt(0), seenRevision: 2, to: 'in_work' })
    expect(second).toMatchObject({ refusal: { code: 'stale', facts: { who: 'Esi' } } })
  })

  it('is refused on trials that are over, and next door', async () => {
    expect(
      refusalOf(
        await moveBatch.call(neighbour.owner.caller, {
          batchId: batchAt(0),
          seenRevision: 1,
          to: 'lost',
          why: 'not mine',
        }),
      ),
    ).toBe('not-found')
    await setTrial('closed')
    expect(refusalOf(await move(0, 1, 'lost', 'late'))).toBe('trial-closed')
  })
})

describe('counting pieces', () => {
  const count = (piecesMade: number, piecesGood: number, seenRevision = 2, who = bakery.early) =>
    countPieces.call(who.caller, { batchId: batchAt(0), seenRevision, piecesMade, piecesGood })

  it('is kept, and counted again by whoever saw the first count', async () => {
    expect(refusalOf(await count(4, 4, 1))).toBe('batch-not-begun')
    valueOf(await begin(0))
    valueOf(await count(4, 3))
    expect(refusalOf(await count(4, 4))).toBe('stale')
    valueOf(await count(3, 3, 3))
    expect(await rowOf(0)).toMatchObject({ piecesMade: 3, piecesGood: 3 })
    expect(await lastEntry()).toMatchObject({ before: { made: 4, good: 3 }, after: { made: 3, good: 3 } })
    expect(valueOf(await getBatch.call(bakery.early.caller, { batchId: batchAt(0) })).pieces).toBe(3)
  })

  it('does not take more good ones than were made, nor parts of one', async () => {
    valueOf(await begin(0))
    expect(refusalOf(await count(4, 5))).toBe('invalid piecesGood:more-than-made')
    expect(refusalOf(await count(-1, 0))).toContain('piecesMade:too-small')
    expect(refusalOf(await count(3.5, 2))).toBe('invalid piecesMade:not-whole')
    expect(refusalOf(await count(4, 4, 2, neighbour.owner))).toBe('not-found')
  })
})

describe('what the floor sees', () => {
  it('is the open trials with their batches in order, and which comes next', async () => {
    valueOf(await begin(0))
    const [shown] = valueOf(await getShift.call(bakery.early.caller, {})).trials.rows
    expect(shown).toMatchObject({ id: trial.trialId, state: 'baking' })
    expect(
      shown?.batches.map(({ code, dayNumber, isNext, cleanDownFirst }) => [code, dayNumber, isNext, cleanDownFirst]),
    ).toEqual([
      [trial.batches[0]!.code, 1, false, false],
      [trial.batches[1]!.code, 1, true, false],
      [trial.batches[2]!.code, 2, false, true],
      [trial.batches[3]!.code, 2, false, false],
    ])
    await setTrial('closed')
    expect(valueOf(await getShift.call(bakery.early.caller, {}))).toMatchObject({
      trials: { rows: [], count: 0 },
      waiting: 0,
      underWay: 0,
    })
    expect(valueOf(await getShift.call(neighbour.owner.caller, {})).trials).toMatchObject({ rows: [], count: 0 })
  })

  it('names what is still to be read once a batch is baked', async () => {
    valueOf(await begin(0))
    valueOf(await move(0, 2, 'in_work'))
    valueOf(await move(0, 3, 'baked'))
    const takenAt = testNow.toISOString()
    valueOf(
      await logReading.call(bakery.early.caller, {
        id: uuid(),
        batchId: batchAt(0),
        measureId: trial.measures['loaf-mass'],
        piece: 1,
        repeat: 1,
        value: '420',
        unit: 'g',
        takenAt,
      }),
    )
    const [shown] = valueOf(await getShift.call(bakery.early.caller, {})).trials.rows
    expect(shown?.batches[0]?.missing.map(({ name, have, of }) => `${name} ${have}/${of}`)).toEqual([
      'Water added 0/1',
      'Dough temperature 0/1',
      'Proof time 0/1',
      'Loaf weight 1/4',
      'Loaf volume 0/8',
    ])
  })

  it('says when a reading that goes by the age of the loaf falls due, in whatever shift that is', async () => {
    const dueAt = async (hours: number) => {
      const now = new Date(testNow.getTime() + hours * 60 * 60_000)
      await db().session.updateMany({ where: { personId: bakery.early.personId }, data: { lastSeenAt: now } })
      const [shown] = valueOf(await getShift.call({ ...bakery.early.caller, now: () => now }, {})).trials.rows
      await db().session.updateMany({ where: { personId: bakery.early.personId }, data: { lastSeenAt: testNow } })
      return shown?.batches[0]?.missing.find(({ code }) => code === 'loaf-mass')?.due
    }
    valueOf(await begin(0))
    valueOf(await move(0, 2, 'in_work'))
    valueOf(await move(0, 3, 'baked'))
    const after = (hours: number) => testNow.getTime() + hours * 60 * 60_000
    expect(await dueAt(0)).toEqual({ when: 'later', from: after(1) })
    expect(await dueAt(2)).toEqual({ when: 'now', until: after(3) })
    expect(await dueAt(4)).toEqual({ when: 'late', since: after(3) })
    // Late is flagged, and read all the same.
    const late = new Date(after(4)).toISOString()
    const reading = {
      batchId: batchAt(0),
      measureId: trial.measures['loaf-mass'],
      piece: 1,
      repeat: 1,
      value: '420',
      unit: 'g',
    }
    const caller = { ...bakery.early.caller, now: () => new Date(after(4)) }
    await db().session.updateMany({
      where: { personId: bakery.early.personId },
      data: { lastSeenAt: new Date(after(4)) },
    })
    valueOf(await logReading.call(caller, { ...reading, id: uuid(), takenAt: late }))
    valueOf(
      await logReading.call(caller, { ...reading, id: uuid(), piece: 2, takenAt: new Date(after(2)).toISOString() }),
    )
    const shown = valueOf(await getReadingLog.call(caller, { batchId: batchAt(0) }))
    await db().session.updateMany({ where: { personId: bakery.early.personId }, data: { lastSeenAt: testNow } })
    expect(shown.readings.map(({ piece, offAge }) => [piece, offAge])).toEqual([
      [1, 'late'],
      [2, null],
    ])
  })

  it('is a batch by its code: no arm, no control, no cost; allergens always', async () => {
    const { weighed, ...shown } = valueOf(await getBatch.call(bakery.owner.caller, { batchId: batchAt(1) }))
    const text = JSON.stringify(shown)
    expect(text).not.toMatch(/Control|armId|arm_|price|cost/i)
    expect(text).not.toContain(trial.armIds[1])
    expect(shown.cautions.allergens).toEqual(['gluten', 'milk'])
    expect(text).not.toMatch(/Milk powder|weighedG/)
    // What is weighed for any dough is asked of every one, so it tells nothing.
    const { weighed: ofControl } = valueOf(await getBatch.call(bakery.owner.caller, { batchId: batchAt(0) }))
    expect(weighed).toEqual(ofControl)
    expect(JSON.stringify(weighed)).not.toMatch(/mass|toleranceG/i)
    expect(shown).toMatchObject({ firstCode: trial.batches[0]!.code, isNext: false })
  })

  it('is nothing before the plan is approved, nothing for what is not there, and nothing next door', async () => {
    expect(refusalOf(await getBatch.call(bakery.owner.caller, { batchId: uuid() }))).toBe('not-found')
    expect(refusalOf(await getBatch.call(neighbour.owner.caller, { batchId: batchAt(0) }))).toBe('not-found')
    expect(refusalOf(await getReadingLog.call(neighbour.owner.caller, { batchId: batchAt(0) }))).toBe('not-found')
    trial = await makeApprovedTrial(bakery, { isUndecided: true })
    expect(refusalOf(await getBatch.call(bakery.owner.caller, { batchId: batchAt(0) }))).toBe('not-found')
    expect(refusalOf(await getReadingLog.call(bakery.owner.caller, { batchId: batchAt(0) }))).toBe('not-found')
    expect(refusalOf(await begin(0))).toBe('trial-not-approved')
  })
})
