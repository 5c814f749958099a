import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { takeEntries } from '@/lib/kitchen/intake/take-entries'
import { correctReading } from '@/lib/kitchen/readings/correct-reading'
import { logReading } from '@/lib/kitchen/readings/log-reading'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { countPieces } from '@/lib/kitchen/shifts/count-pieces'
import { getBatch } from '@/lib/kitchen/shifts/get-batch'
import { moveBatch } from '@/lib/kitchen/shifts/move-batch'
import { noteCause } from '@/lib/kitchen/shifts/note-cause'
import { makeApprovedTrial, type ApprovedTrial } from '../../support/approved-trial'
import { callerOf, makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery
let trial: ApprovedTrial
let batchId: string

beforeAll(async () => {
  database = await freshDatabase()
  neighbour = await makeBakery('Next Door')
})
afterAll(() => database.drop())
beforeEach(async () => {
  bakery = await makeBakery('Mill Row')
  trial = await makeApprovedTrial(bakery, { days: 2 })
  batchId = trial.batches[0]!.batchId
})

/** Esi, so many minutes after four. */
const esi = (minute: number) => callerOf(bakery.early.sessionSecret, new Date(testNow.getTime() + minute * 60_000))
const begin = async () => valueOf(await beginBatch.call(esi(0), { batchId, seenRevision: 1, cleanDownDone: false }))
const row = () => db().batch.findUniqueOrThrow({ where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: batchId } } })
const move = async (minute: number, to: string, why = 'the tray fell') =>
  moveBatch.call(esi(minute), { batchId, seenRevision: (await row()).revision, to, why })
const note = (minute: number, what = 'the tray fell', noticedMinAgo = 0) =>
  noteCause.call(esi(minute), { batchId, what, noticedMinAgo })
const read = (minute: number, code: string, value: string, unit: string, piece: number | null = 1) =>
  logReading.call(esi(minute), {
    id: uuid(),
    batchId,
    measureId: trial.measures[code],
    piece,
    repeat: 1,
    value,
    unit,
    takenAt: testNow.toISOString(),
  })
const shown = async () => valueOf(await getBatch.call(esi(15), { batchId }))

describe('a dough that was never begun', () => {
  it('is not baked, for a reason; it is not lost and not set aside', async () => {
    expect(refusalOf(await move(0, 'lost'))).toBe('not-begun-not-lost')
    expect(refusalOf(await move(0, 'set_aside'))).toBe('not-begun-not-lost')
    expect(refusalOf(await move(0, 'not_baked', ' '))).toMatch(/^invalid why/)
    expect((await row()).state).toBe('waiting')
    valueOf(await move(0, 'not_baked', 'the oven is cold'))
    expect(await row()).toMatchObject({ state: 'not_baked', stateWhy: 'the oven is cold', begunAt: null })
    expect(refusalOf(await move(1, 'lost'))).toBe('not-the-next-step')
  })

  it('has nothing to read or count, however it is sent', async () => {
    valueOf(await move(0, 'not_baked'))
    expect(refusalOf(await read(1, 'loaf-mass', '412', 'g'))).toBe('batch-not-baked')
    const sent = {
      kind: 'reading',
      id: uuid(),
      batchId,
      measureId: trial.measures['loaf-mass'],
      piece: 1,
      repeat: 1,
      value: '412',
      unit: 'g',
      takenAt: testNow.toISOString(),
    }
    expect(valueOf(await takeEntries.call(esi(1), { entries: [sent] })).entries).toMatchObject([
      { outcome: 'refused', refusal: { code: 'batch-not-baked' } },
    ])
    const { revision: seenRevision } = await row()
    const counted = await countPieces.call(esi(1), { batchId, seenRevision, piecesMade: 4, piecesGood: 4 })
    expect(refusalOf(counted)).toBe('batch-not-baked')
  })

  it('is so to the database as well, for everybody who writes to it', async () => {
    await connected(database.superUrl, async (client) => {
      const set = (change: string) => client.query(`UPDATE batch SET ${change} WHERE id = '${batchId}'`)
      await expect(set(`state = 'lost', state_why = 'x'`)).rejects.toThrow(/batch_taken_out_begun/)
      await expect(set(`state = 'set_aside', state_why = 'x'`)).rejects.toThrow(/batch_taken_out_begun/)
      await expect(set(`state = 'not_baked'`)).rejects.toThrow(/batch_ended_says_why/)
      await expect(set(`state = 'not_baked', state_why = 'x', begun_at = now()`)).rejects.toThrow(
        /batch_not_baked_not_begun/,
      )
      await set(`state = 'not_baked', state_why = 'x'`)
      await expect(set(`state = 'weighing', begun_at = now()`)).rejects.toMatchObject({ code: 'EV005' })
    })
  })
})

describe('a dough that was begun', () => {
  beforeEach(begin)

  it('is lost or set aside while nothing that decides was read', async () => {
    expect(refusalOf(await move(1, 'not_baked'))).toBe('begun-so-baked')
    valueOf(await read(1, 'dough-temp', '26', '°C', null))
    valueOf(await read(1, 'dough-mass', '480', 'g'))
    expect((await shown()).whyNotOut).toBeNull()
    valueOf(await move(2, 'lost'))
  })

  it.each([
    ['loaf-volume', '1900', 'mL'],
    ['loaf-mass', '412', 'g'],
  ])('counts from the first reading of its %s on, and nothing that is noted then takes it out', async (...reading) => {
    valueOf(await read(10, ...reading))
    for (const to of ['lost', 'set_aside']) expect(refusalOf(await move(11, to))).toBe('read-before-any-cause')
    valueOf(await note(12, 'it smelled odd', 60))
    for (const to of ['lost', 'set_aside']) expect(refusalOf(await move(13, to))).toBe('read-before-any-cause')
    expect((await shown()).whyNotOut).toBe('read-before-any-cause')
    expect((await row()).state).toBe('weighing')
    const { revision: seenRevision } = await row()
    valueOf(await moveBatch.call(esi(14), { batchId, seenRevision, to: 'in_work' }))
  })

  it('goes out for a cause that was noted before, with what was read still there', async () => {
    valueOf(await note(5, 'the salt was forgotten', 3))
    valueOf(await read(10, 'loaf-volume', '1900', 'mL'))
    expect((await shown()).whyNotOut).toBeNull()
    valueOf(await move(11, 'set_aside', 'no salt'))
    const { causes, readings, stateWhy } = await shown()
    expect(stateWhy).toBe('no salt')
    expect(readings).toHaveLength(1)
    expect(causes).toMatchObject([
      {
        what: 'the salt was forgotten',
        noticedAt: new Date(testNow.getTime() + 2 * 60_000),
        at: new Date(testNow.getTime() + 5 * 60_000),
        person: { name: 'Esi' },
      },
    ])
  })

  it('goes by the receipt: neither an early time on a reading nor an early notice makes a cause come first', async () => {
    valueOf(await read(10, 'loaf-volume', '1900', 'mL'))
    valueOf(await note(10, 'it fell', 10))
    expect(refusalOf(await move(10, 'lost'))).toBe('read-before-any-cause')
  })

  it('is not freed by a correction of what was read', async () => {
    valueOf(await read(10, 'loaf-volume', '1900', 'mL'))
    const { id } = (await shown()).readings[0]!
    valueOf(
      await correctReading.call(esi(11), {
        id: uuid(),
        supersedesId: id,
        piece: 2,
        repeat: 1,
        value: '1900',
        unit: 'mL',
        reason: 'it was the other loaf',
      }),
    )
    valueOf(await note(12))
    expect(refusalOf(await move(13, 'lost'))).toBe('read-before-any-cause')
  })
})

describe('noting what happened', () => {
  it('is for every open trial of one’s own, needs words, and cannot be changed by anybody', async () => {
    expect(refusalOf(await note(0, '  '))).toMatch(/^invalid what/)
    expect(refusalOf(await note(0, 'x', -1))).toBe('invalid noticedMinAgo:too-small')
    expect(refusalOf(await note(0, 'x', 1441))).toBe('invalid noticedMinAgo:too-big')
    expect(refusalOf(await noteCause.call(neighbour.owner.caller, { batchId, what: 'x', noticedMinAgo: 0 }))).toBe(
      'not-found',
    )
    valueOf(await note(0))
    const entry = await db().auditEntry.findFirstOrThrow({
      where: { bakeryId: bakery.bakeryId },
      orderBy: { number: 'desc' },
    })
    expect(JSON.parse(entry.entryText)).toMatchObject({
      action: 'shifts.note-cause',
      target: batchId,
      after: { batch: trial.batches[0]!.code, what: 'the tray fell' },
    })
    for (const url of [database.ownerUrl, database.superUrl])
      await connected(url, async (client) => {
        for (const change of [`UPDATE batch_cause SET what = 'y'`, `DELETE FROM batch_cause`])
          await expect(client.query(change)).rejects.toMatchObject({ code: 'EV001' })
      })
    await db().trial.update({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: trial.trialId } },
      data: { state: 'closed' },
    })
    expect(refusalOf(await note(1))).toBe('trial-closed')
  })
})
