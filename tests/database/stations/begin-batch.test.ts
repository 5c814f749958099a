import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { readAuditEntry } from '@/lib/documents/audit-entry/read-audit-entry'
import { takeEntries } from '@/lib/kitchen/intake/take-entries'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { moveBatch } from '@/lib/kitchen/shifts/move-batch'
import { getFloor } from '@/lib/kitchen/stations/get-floor'
import { withdrawStation } from '@/lib/kitchen/stations/withdraw-station'
import { makeApprovedTrial, type ApprovedTrial } from '@/tests/support/approved-trial'
import { makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '@/tests/support/bakery'
import { freshDatabase, type FreshDatabase } from '@/tests/support/database'
import { atStation, enrolledStation, givePin, tokenAt, type TestStation } from '@/tests/support/stations'

let database: FreshDatabase
let bakery: TestBakery
let station: TestStation
let trial: ApprovedTrial
const tokens = { early: '', late: '' }

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
  station = await enrolledStation(bakery)
  for (const who of ['early', 'late'] as const) {
    await givePin(bakery[who])
    tokens[who] = await tokenAt(station, bakery[who])
  }
})
afterAll(() => database.drop())
beforeEach(async () => {
  trial = await makeApprovedTrial(bakery, { days: 2 })
})

type Tap = { by?: string; formId?: string; more?: object }
const tap = (at: number, { by = tokens.early, formId = uuid(), more = {} }: Tap = {}) =>
  beginBatch.call(
    { ...atStation(station, by), formId },
    { batchId: trial.batches[at]!.batchId, seenRevision: 1, cleanDownDone: false, ...more },
  )
const everyNext = async () => valueOf(await getFloor.call(atStation(station, tokens.early), {})).next
/** Of this test's trial; those before it left theirs. */
const next = async (of = trial) => {
  const { number } = await db().trial.findFirstOrThrow({ where: { id: of.trialId } })
  return (await everyNext()).filter(({ trialNumber }) => trialNumber === number)
}
const statesOf = async () =>
  (await db().batch.findMany({ where: { trialId: trial.trialId }, orderBy: { code: 'asc' } })).map(({ state }) => state)
const begins = () =>
  db().auditEntry.findMany({
    where: {
      bakeryId: bakery.bakeryId,
      action: 'shifts.begin-batch',
      targetId: { in: trial.batches.map(({ batchId }) => batchId) },
    },
    orderBy: { number: 'asc' },
  })

describe('the dough that a tablet may begin', () => {
  it('is the first that waits in the drawn order, one of each trial, with its allergens and nothing of what it is', async () => {
    const other = await makeApprovedTrial(bakery)
    for (const each of [trial, other]) {
      const [first] = each.batches
      expect(await next(each)).toMatchObject([{ id: first!.batchId, code: first!.code, revision: 1, dayNumber: 1 }])
      expect(await next(each)).toHaveLength(1)
    }
    valueOf(await tap(0))
    const [one] = await next()
    expect(one).toMatchObject({ id: trial.batches[1]!.batchId, allergens: ['gluten', 'milk'], cleanDownFirst: false })
    for (const secret of [...trial.armIds, 'Milk powder', 'milk powder', 'Control', 'mass'])
      expect(JSON.stringify(one)).not.toContain(secret)
  })

  it('comes after one that is not baked, is none of a trial that has no more, and of no neighbour', async () => {
    const out = { batchId: trial.batches[0]!.batchId, seenRevision: 1, to: 'not_baked', why: 'no flour' }
    valueOf(await moveBatch.call(bakery.early.caller, out))
    expect((await next()).map(({ id }) => id)).toEqual([trial.batches[1]!.batchId])
    for (const { batchId } of trial.batches.slice(1))
      valueOf(await moveBatch.call(bakery.early.caller, { ...out, batchId }))
    expect(await next()).toEqual([])
    const before = await everyNext()
    await makeApprovedTrial(await makeBakery('Next Door'))
    expect(await everyNext()).toEqual(before)
  })
})

describe('a tap that begins a dough', () => {
  it('begins it by whoever is on the tablet, with the station in the record', async () => {
    expect(valueOf(await tap(0))).toEqual({ batchId: trial.batches[0]!.batchId })
    expect(await statesOf()).toEqual(['weighing', 'waiting', 'waiting', 'waiting'])
    const [entry] = await begins()
    expect(entry?.personId).toBe(bakery.early.personId)
    expect(readAuditEntry(entry!.entryText)).toMatchObject({
      entry: { who: { kind: 'station', station: station.stationId, person: { person: bakery.early.personId } } },
    })
  })

  it('that comes twice, at once or later, begins one dough and is answered the same', async () => {
    const formId = uuid()
    const both = await Promise.all([tap(0, { formId }), tap(0, { formId })])
    for (const each of [...both, await tap(0, { formId })])
      expect(valueOf(each)).toEqual({ batchId: trial.batches[0]!.batchId })
    expect(await begins()).toHaveLength(1)
    expect(await statesOf()).toEqual(['weighing', 'waiting', 'waiting', 'waiting'])
  })

  it('of another person, or another tap, begins nothing that is begun already', async () => {
    const formId = uuid()
    valueOf(await tap(0, { formId }))
    expect(refusalOf(await tap(0, { formId, by: tokens.late }))).toMatch(/^stale/)
    expect(refusalOf(await tap(0))).toMatch(/^stale/)
    expect(await begins()).toHaveLength(1)
  })

  it('begins nothing before its turn, nothing that nobody signed the clean-down for, and the signature is in the record', async () => {
    expect(refusalOf(await tap(1))).toBe('before-its-turn swapWhy:missing')
    valueOf(await tap(0))
    valueOf(await tap(1))
    expect((await next())[0]).toMatchObject({ id: trial.batches[2]!.batchId, cleanDownFirst: true })
    expect(refusalOf(await tap(2))).toBe('clean-down-first cleanDownDone:clean-down-needed')
    // What is not begun takes no weighing either.
    const line = await db().armLine.findFirstOrThrow({ where: { armId: trial.batches[2]!.armId } })
    const weighing = {
      kind: 'weighing',
      id: uuid(),
      batchId: trial.batches[2]!.batchId,
      stageId: line.stageId,
      ingredientId: line.ingredientId,
      part: 'line',
      how: 'weighed',
      mass: '10',
      unit: 'g',
      takenAt: testNow.toISOString(),
    }
    const sent = async () =>
      valueOf(await takeEntries.call(atStation(station, tokens.early), { entries: [weighing] })).entries[0]
    expect(await sent()).toMatchObject({ outcome: 'refused', refusal: { code: 'batch-not-begun' } })
    valueOf(await tap(2, { by: tokens.late, more: { cleanDownDone: true } }))
    const signed = (await begins()).at(-1)
    expect(signed?.personId).toBe(bakery.late.personId)
    expect(readAuditEntry(signed!.entryText)).toMatchObject({ entry: { after: { cleanDown: 'done' } } })
  })

  it('does nothing with nobody on the tablet, from one that was withdrawn, or by somebody who was switched off', async () => {
    expect(refusalOf(await tap(0, { by: 'nobody' }))).toBe('not-allowed')
    await db().person.update({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: bakery.late.personId } },
      data: { endedAt: testNow },
    })
    expect(refusalOf(await tap(0, { by: tokens.late }))).toBe('not-allowed')
    valueOf(await withdrawStation.call(bakery.owner.caller, { stationId: station.stationId }))
    expect(refusalOf(await tap(0))).toBe('not-signed-in')
    expect(await statesOf()).toEqual(['waiting', 'waiting', 'waiting', 'waiting'])
  })
})
