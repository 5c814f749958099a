import fs from 'node:fs'
import path from 'node:path'
import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { logReading } from '@/lib/kitchen/readings/log-reading'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { countPieces } from '@/lib/kitchen/shifts/count-pieces'
import { getBatch } from '@/lib/kitchen/shifts/get-batch'
import { moveBatch } from '@/lib/kitchen/shifts/move-batch'
import { undoMs } from '@/lib/kitchen/batches/rules'
import { undoMove } from '@/lib/kitchen/shifts/undo-move'
import { logWeighings } from '@/lib/kitchen/weighings/log-weighings'
import { makeApprovedTrial, type ApprovedTrial } from '../../support/approved-trial'
import {
  callerOf,
  makeBakery,
  refusalOf,
  testNow,
  valueOf,
  type TestBakery,
  type TestPerson,
} from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery
let trial: ApprovedTrial

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
  neighbour = await makeBakery('Next Door')
})
afterAll(() => database.drop())
beforeEach(async () => {
  trial = await makeApprovedTrial(bakery, { days: 2 })
})

const batchAt = (at: number) => trial.batches[at]!.batchId
const whenMs = (ms: number, who: TestPerson = bakery.early) =>
  callerOf(who.sessionSecret, new Date(testNow.getTime() + ms))
const begin = (at: number, more: object = {}, ms = 0) =>
  beginBatch.call(whenMs(ms), { batchId: batchAt(at), seenRevision: 1, cleanDownDone: true, ...more })
const move = (at: number, seenRevision: number, to: string, why?: string, ms = 0) =>
  moveBatch.call(whenMs(ms), { batchId: batchAt(at), seenRevision, to, ...(why && { why }) })
const undo = (at: number, seenRevision: number, ms = 1000, who?: TestPerson) =>
  undoMove.call(whenMs(ms, who), { batchId: batchAt(at), seenRevision })
const rowOf = (at: number) =>
  db().batch.findUniqueOrThrow({ where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: batchAt(at) } } })
const stateOfTrial = async () =>
  (await db().trial.findUniqueOrThrow({ where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: trial.trialId } } }))
    .state
const log = (at: number, ms: number) =>
  logReading.call(whenMs(ms), {
    id: uuid(),
    batchId: batchAt(at),
    measureId: trial.measures['dough-temp'],
    repeat: 1,
    value: '26',
    unit: '°C',
    takenAt: testNow.toISOString(),
  })
const entries = async () =>
  (
    await db().auditEntry.findMany({
      where: { bakeryId: bakery.bakeryId, targetId: batchAt(0) },
      orderBy: { number: 'asc' },
    })
  ).map(({ action }) => action)

describe('when a dough came out of the oven', () => {
  /** Far less than a session may be idle. */
  const later = 5 * 60_000

  it('stays through later moves, goes when it goes back in, and comes anew', async () => {
    valueOf(await begin(0))
    valueOf(await move(0, 2, 'in_work'))
    expect(await rowOf(0)).toMatchObject({ bakedAt: null })
    valueOf(await move(0, 3, 'baked', undefined, later))
    const out = new Date(testNow.getTime() + later)
    expect(await rowOf(0)).toMatchObject({ state: 'baked', bakedAt: out })
    valueOf(await undo(0, 4, later + 1000))
    expect(await rowOf(0)).toMatchObject({ state: 'in_work', bakedAt: null })
    valueOf(await move(0, 5, 'baked', undefined, 2 * later))
    valueOf(await move(0, 6, 'measured', 'all loaves fell', 3 * later))
    expect(await rowOf(0)).toMatchObject({ state: 'measured', bakedAt: new Date(testNow.getTime() + 2 * later) })
    valueOf(await undo(0, 7, 3 * later + 1000))
    expect(await rowOf(0)).toMatchObject({ state: 'baked', bakedAt: new Date(testNow.getTime() + 2 * later) })
  })

  it('is known of those from before it was kept, as the record has it', async () => {
    valueOf(await begin(0))
    valueOf(await move(0, 2, 'in_work'))
    valueOf(await move(0, 3, 'baked', undefined, later))
    valueOf(await move(0, 4, 'measured', 'all loaves fell', 2 * later))
    valueOf(await begin(1))
    valueOf(await move(1, 2, 'in_work'))
    valueOf(await move(1, 3, 'baked', undefined, later))
    valueOf(await undo(1, 4, later + 1000))
    const kept = await rowOf(0)
    const migration = fs.readFileSync(
      path.resolve('prisma/migrations/20261211000001_ages_of_readings/migration.sql'),
      'utf8',
    )
    const filling = /ALTER TABLE batch DISABLE TRIGGER[^]*ENABLE TRIGGER batch_moves;/.exec(migration)?.[0] ?? ''
    await connected(database.ownerUrl, async (owner) => {
      await owner.query(
        `ALTER TABLE batch DISABLE TRIGGER batch_moves; UPDATE batch SET baked_at = NULL; ALTER TABLE batch ENABLE TRIGGER batch_moves`,
      )
      await owner.query(filling)
    })
    expect(await rowOf(0)).toEqual(kept)
    expect(kept.bakedAt).toEqual(new Date(testNow.getTime() + later))
    expect(await rowOf(1)).toMatchObject({ state: 'in_work', bakedAt: null })
  })
})

describe('a move that was a slip', () => {
  it('goes back where it came from, step by step, and both stand in the record', async () => {
    valueOf(await begin(0))
    valueOf(await move(0, 2, 'in_work'))
    valueOf(await undo(0, 3))
    expect(await rowOf(0)).toMatchObject({ state: 'weighing', begunAt: testNow, revision: 4, movedFrom: null })
    expect(await entries()).toEqual(['shifts.begin-batch', 'shifts.move-batch', 'shifts.undo-move'])
    valueOf(await move(0, 4, 'in_work'))
    valueOf(await move(0, 5, 'baked'))
    valueOf(await move(0, 6, 'measured', 'all loaves fell'))
    valueOf(await undo(0, 7))
    expect(await rowOf(0)).toMatchObject({ state: 'baked', stateWhy: null, doneAt: null })
  })

  it.each(['lost', 'set_aside'])('brings one that was %s back from wherever it was', async (to) => {
    valueOf(await move(0, 1, 'not_baked', 'wrong batch'))
    valueOf(await undo(0, 2))
    expect(await rowOf(0)).toMatchObject({ state: 'waiting', stateWhy: null, doneAt: null })
    valueOf(await begin(0, { seenRevision: 3 }))
    valueOf(await move(0, 4, to, 'wrong batch'))
    valueOf(await undo(0, 5))
    expect(await rowOf(0)).toMatchObject({ state: 'weighing', begunAt: testNow })
  })

  it('lets a trial wait again when its first dough was not meant to be begun', async () => {
    valueOf(await begin(0))
    expect(await stateOfTrial()).toBe('baking')
    valueOf(await undo(0, 2))
    expect(await rowOf(0)).toMatchObject({ state: 'waiting', begunAt: null })
    expect(await stateOfTrial()).toBe('approved')
  })

  it('leaves the trial baking while another dough is begun', async () => {
    valueOf(await begin(0))
    valueOf(await begin(1, {}, 1))
    valueOf(await undo(1, 2))
    expect(await stateOfTrial()).toBe('baking')
  })
})

describe('taking a move back is refused', () => {
  it('after ten seconds of the server, to the millisecond', async () => {
    valueOf(await begin(0))
    expect(refusalOf(await undo(0, 2, undoMs + 1))).toBe('undo-too-late')
    expect(refusalOf(await undo(0, 2, -undoMs - 1))).toBe('undo-too-late')
    valueOf(await undo(0, 2, undoMs))
  })

  it('to everybody who did not make it, and next door', async () => {
    valueOf(await begin(0))
    for (const who of [bakery.late, bakery.head, bakery.owner])
      expect(refusalOf(await undo(0, 2, 1000, who))).toBe('undo-not-yours')
    expect(refusalOf(await undo(0, 2, 1000, neighbour.owner))).toBe('not-found')
  })

  it('where nothing was moved, twice, and to a page that is behind', async () => {
    expect(refusalOf(await undo(0, 1))).toBe('nothing-to-undo')
    valueOf(await begin(0))
    valueOf(await undo(0, 2))
    expect(refusalOf(await undo(0, 2))).toMatch(/^stale/)
    expect(refusalOf(await undo(0, 3))).toBe('nothing-to-undo')
  })

  it('once a reading, a count or another dough was built on it', async () => {
    valueOf(await begin(0))
    valueOf(await log(0, 1))
    expect(refusalOf(await undo(0, 2))).toBe('undo-built-on')
    valueOf(await move(0, 2, 'in_work', undefined, 2))
    valueOf(await countPieces.call(whenMs(3), { batchId: batchAt(0), seenRevision: 3, piecesMade: 4, piecesGood: 4 }))
    expect(refusalOf(await undo(0, 4))).toBe('undo-built-on')
    valueOf(await move(1, 1, 'not_baked', 'no flour', 4))
    valueOf(await begin(2, {}, 5))
    expect(refusalOf(await undo(1, 2))).toBe('undo-built-on')
  })

  it('once a line was weighed: what was weighed is of a dough that was begun', async () => {
    valueOf(await begin(0))
    const line = await db().armLine.findFirstOrThrow({ where: { armId: trial.batches[0]!.armId } })
    const weighed = {
      stageId: line.stageId,
      ingredientId: line.ingredientId,
      part: 'line',
      seenId: null,
      how: 'weighed',
      mass: String(line.weighedG),
    }
    valueOf(await logWeighings.call(whenMs(1), { batchId: batchAt(0), lines: [weighed], unit: 'g', confirmed: false }))
    expect(refusalOf(await undo(0, 2))).toBe('undo-built-on')
    expect(await rowOf(0)).toMatchObject({ state: 'weighing' })
  })

  it('on a trial that was ended meanwhile', async () => {
    valueOf(await begin(0))
    await db().trial.update({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: trial.trialId } },
      data: { state: 'stopped' },
    })
    expect(refusalOf(await undo(0, 2))).toBe('trial-stopped')
  })

  it('to one of two who press at the same moment', async () => {
    valueOf(await begin(0))
    const both = await Promise.all([undo(0, 2), undo(0, 2)])
    expect(both.filter(({ ok }) => ok)).toHaveLength(1)
    expect(await entries()).toEqual(['shifts.begin-batch', 'shifts.undo-move'])
  })
})

it('is offered to whoever made the move, for what is left of the ten seconds', async () => {
  valueOf(await begin(0))
  const seen = async (ms: number, who?: TestPerson) =>
    valueOf(await getBatch.call(whenMs(ms, who), { batchId: batchAt(0) })).undo
  expect(await seen(4000)).toEqual({ to: 'waiting', forMs: 6000 })
  expect(await seen(undoMs + 1)).toBeNull()
  expect(await seen(0, bakery.late)).toBeNull()
})
