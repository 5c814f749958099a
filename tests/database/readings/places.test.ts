import fs from 'node:fs'
import path from 'node:path'
import fc from 'fast-check'
import pg from 'pg'
import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { appRole } from '@/lib/db/embedded/roles'
import { inTransaction } from '@/lib/db/transaction'
import { correctReading } from '@/lib/kitchen/readings/correct-reading'
import { keepReadings, type ReadingRow } from '@/lib/kitchen/readings/keep-readings'
import { logReading } from '@/lib/kitchen/readings/log-reading'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { makeApprovedTrial, type ApprovedTrial } from '../../support/approved-trial'
import { makeBakery, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'
import { forLong } from '../../support/long'
import { placesTwice } from '../../support/places-twice'

let database: FreshDatabase
let bakery: TestBakery
let trial: ApprovedTrial

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery()
  trial = await makeApprovedTrial(bakery)
})
afterAll(() => database.drop())

function row(change: Partial<ReadingRow> = {}): ReadingRow {
  return {
    bakeryId: bakery.bakeryId,
    id: uuid(),
    trialId: trial.trialId,
    batchId: trial.batches[0]!.batchId,
    measureId: trial.measures['loaf-mass']!,
    piece: 1,
    factorLevel: null,
    repeat: 1,
    value: 412.5,
    valueEntered: '412.5',
    unitEntered: 'g',
    personId: bakery.early.personId,
    takenAt: testNow,
    receivedAt: testNow,
    supersedesId: null,
    reason: null,
    contentHash: 'b'.repeat(64),
    plausibleLeast: 240,
    plausibleMost: 720,
    ...change,
  }
}
const keep = (...rows: ReadingRow[]) => inTransaction((tx) => keepReadings(tx, rows))

async function mustAgree(): Promise<void> {
  const { byTable, byReadings } = await placesTwice()
  expect(byTable).toEqual(byReadings)
}

it('goes with each reading that is logged or corrected, to another piece and back', async () => {
  const { batchId } = trial.batches[0]!
  valueOf(await beginBatch.call(bakery.early.caller, { batchId, seenRevision: 1, cleanDownDone: false }))
  const { readingId } = valueOf(
    await logReading.call(bakery.early.caller, {
      id: uuid(),
      batchId,
      measureId: trial.measures['loaf-mass'],
      piece: 1,
      repeat: 1,
      value: '412.5',
      unit: 'g',
      takenAt: testNow.toISOString(),
    }),
  )
  await mustAgree()
  const moved = valueOf(
    await correctReading.call(bakery.head.caller, {
      id: uuid(),
      supersedesId: readingId,
      piece: 2,
      repeat: 1,
      value: '412.5',
      unit: 'g',
      reason: 'other piece',
    }),
  ).readingId
  await mustAgree()
  expect(await db().readingPlace.findMany({ where: { batchId }, select: { readingId: true, piece: true } })).toEqual([
    { readingId: moved, piece: 2 },
  ])
  valueOf(
    await correctReading.call(bakery.head.caller, {
      id: uuid(),
      supersedesId: moved,
      piece: 1,
      repeat: 1,
      value: '412.5',
      unit: 'g',
      reason: 'it was right',
    }),
  )
  await mustAgree()
})

it('lets no second reading hold at a place, nor one of the whole batch, and keeps nothing of such a statement', async () => {
  const measureId = trial.measures['dough-temp']!
  await keep(row({ measureId, piece: null }))
  await expect(keep(row({ measureId, piece: null }))).rejects.toThrow(/reading_place_taken/)
  await expect(keep(row({ piece: 3 }), row({ piece: 3 }))).rejects.toThrow(/reading_place_taken/)
  await mustAgree()
})

it('is written by readings and by nobody else, whatever their rights', async () => {
  const { id } = row()
  await keep(row({ id, piece: 4 }))
  const tries = [
    'UPDATE reading_place SET repeat = 9',
    'DELETE FROM reading_place',
    'TRUNCATE reading_place',
    `INSERT INTO reading_place SELECT bakery_id, reading_id, batch_id, measure_id, 9, NULL, 9 FROM reading_place LIMIT 1`,
  ]
  for (const [url, code] of [
    [database.appUrl, '42501'],
    [database.ownerUrl, 'EV006'],
  ] as const) {
    await connected(url, async (client) => {
      for (const statement of tries) {
        const error: unknown = await client.query(statement).then(
          () => null,
          (thrown: unknown) => thrown,
        )
        expect(error instanceof pg.DatabaseError ? error.code : error, `${url} ${statement}`).toBe(code)
      }
    })
  }
  await mustAgree()
})

it('is filled by its migration from the readings that are there, corrected ones among them', async () => {
  const batchId = trial.batches[1]!.batchId
  const [first, second, third] = [uuid(), uuid(), uuid()]
  await keep(
    row({ id: first, batchId }),
    row({ id: second, batchId, piece: 2, supersedesId: first, reason: 'slip' }),
    row({ id: third, batchId, supersedesId: second, reason: 'slip' }),
    row({ batchId, piece: 2 }),
  )
  const before = await placesTwice()
  await connected(database.ownerUrl, async (client) => {
    await client.query(
      'DROP TRIGGER reading_takes_place ON reading; DROP TABLE reading_place; DROP FUNCTION reading_takes_place, refuse_place_by_hand',
    )
    await client.query(
      fs.readFileSync(
        path.join(import.meta.dirname, '../../../prisma/migrations/20261130020000_readings_have_places/migration.sql'),
        'utf8',
      ),
    )
    await client.query(`GRANT SELECT ON reading_place TO ${appRole}`)
  })
  expect(await placesTwice()).toEqual(before)
  await mustAgree()
})

/**
 * A statement of several readings and corrections: of a random one that is there, or of one of the same statement.
 * Numbers are drawn small, so that places are taken and readings corrected twice again and again.
 */
const statement = fc.array(
  fc.record({
    piece: fc.integer({ min: 1, max: 3 }),
    repeat: fc.integer({ min: 1, max: 2 }),
    corrects: fc.option(fc.nat(9)),
  }),
  { minLength: 1, maxLength: 4 },
)

it('says after any history of statements, refused ones among them, what following the corrections says', async () => {
  await fc.assert(
    fc.asyncProperty(fc.array(statement, { minLength: 1, maxLength: 8 }), async (history) => {
      const batchId = (await makeApprovedTrial(bakery)).batches[0]!.batchId
      const { trialId } = await db().batch.findFirstOrThrow({ where: { id: batchId }, select: { trialId: true } })
      const kept: string[] = []
      for (const drawn of history) {
        const ids = drawn.map(() => uuid())
        const rows = drawn.map(({ piece, repeat, corrects }, at) => {
          const others = [...kept, ...ids.slice(0, at)]
          const supersedesId = corrects === null ? null : (others[corrects % Math.max(1, others.length)] ?? null)
          return row({ id: ids[at]!, trialId, batchId, piece, repeat, supersedesId, reason: supersedesId && 'slip' })
        })
        const before = await db().readingPlace.count()
        const isKept = await keep(...rows).then(
          () => true,
          () => false,
        )
        if (isKept) kept.push(...ids)
        else expect(await db().readingPlace.count()).toBe(before)
        await mustAgree()
      }
    }),
    { numRuns: forLong(12, 200), seed: 20261129 },
  )
})
