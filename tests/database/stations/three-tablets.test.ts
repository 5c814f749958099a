import fc from 'fast-check'
import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, describe, it, vi } from 'vitest'
import { db } from '@/lib/db/client'
import { listLacking } from '@/lib/kitchen/intake/list-lacking'
import { takeEntries } from '@/lib/kitchen/intake/take-entries'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { makeApprovedTrial } from '@/tests/support/approved-trial'
import { makeBakery, testNow, valueOf, type TestBakery } from '@/tests/support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '@/tests/support/database'
import { forLong } from '@/tests/support/long'
import { atStation, enrolledStation, type TestStation } from '@/tests/support/stations'
import { modelBook } from '@/tests/support/tablets/model-book'
import { anyMoves, playTablets, type Scene } from '@/tests/support/tablets/three-tablets'

let database: FreshDatabase
let bakery: TestBakery
let people: Scene['people']
let station: TestStation

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
  station = await enrolledStation(bakery)
  people = [bakery.early, bakery.late].map(({ personId }, at) => ({ personId, personName: `Person ${at}` }))
})
afterAll(() => database.drop())

/** A dough of a trial of its own, and the real intake in the place of the network's other end. */
async function realScene(): Promise<Scene> {
  const { bakeryId, early } = bakery
  const { batches, measures } = await makeApprovedTrial(bakery)
  const { batchId } = batches[0]!
  valueOf(await beginBatch.call(early.caller, { batchId, seenRevision: 1, cleanDownDone: true }))
  const came: string[] = []
  const of = { where: { bakeryId, batchId }, select: { id: true, contentHash: true } } as const
  const held = async () => {
    const [aside, ...kept] = await Promise.all([
      db().entryToSettle.findMany({ where: { bakeryId, batchId }, select: { entryId: true, hash: true } }),
      db().reading.findMany(of),
      db().note.findMany(of),
      db().batchCause.findMany(of),
    ])
    return {
      book: kept
        .flat()
        .sort((a, b) => came.indexOf(a.id) - came.indexOf(b.id))
        .map(({ id, contentHash }) => `${id} ${contentHash}`),
      aside: aside.map(({ entryId, hash }) => `${entryId} ${hash}`),
    }
  }
  return {
    batchId,
    goneId: uuid(),
    measureId: measures['loaf-mass']!,
    people,
    held,
    // Its rows are those of a copy; what the record says of the others stays, and nothing asks it here.
    async putBack(to) {
      const lost = came.splice(to % (came.length + 1))
      const tables = {
        reading_place: 'reading_id',
        reading: 'id',
        note: 'id',
        batch_cause: 'id',
        entry_to_settle: 'entry_id',
      }
      await connected(database.superUrl, async (client) => {
        await client.query('SET session_replication_role = replica')
        for (const [table, column] of Object.entries(tables))
          await client.query(`DELETE FROM ${table} WHERE batch_id = $1 AND ${column} = ANY ($2)`, [batchId, lost])
      })
    },
    book: (address, body) =>
      byOwnClock(async () => {
        if (address.endsWith('/lacking'))
          return { status: 200, body: valueOf(await listLacking.call(atStation(station, null), body)) }
        const { entries } = body as { entries: { id: string }[] }
        const answers = valueOf(await takeEntries.call(early.caller, { entries })).entries
        came.push(...entries.flatMap(({ id }) => (came.includes(id) ? [] : [id])))
        return {
          status: 200,
          body: {
            entries: answers.map((answer) =>
              answer.outcome === 'kept'
                ? answer
                : { ...answer, refusal: answer.refusal.code, words: answer.refusal.code },
            ),
          },
        }
      }),
  }
}

/** A tablet's clock jumps, and the book's does not. */
async function byOwnClock<Value>(work: () => Promise<Value>): Promise<Value> {
  const onTablet = Date.now()
  vi.setSystemTime(testNow)
  try {
    return await work()
  } finally {
    vi.setSystemTime(onTablet)
  }
}

async function modelScene(): Promise<Scene> {
  const goneId = '0198a000-0000-7000-8000-000000000001'
  return {
    ...modelBook(goneId),
    goneId,
    batchId: '0198a000-0000-7000-8000-000000000002',
    measureId: '0198a000-0000-7000-8000-000000000003',
    people,
  }
}

describe('three tablets in any order of taps, cuts, lost answers, jumps of the clock, restarts and older copies of the book', () => {
  it('lose nothing that they kept, and bring each once and in its order, to a book that keeps its word', async () => {
    await fc.assert(
      fc.asyncProperty(anyMoves(60), (moves) => playTablets(moves, testNow, modelScene)),
      { numRuns: forLong(60, 2_000) },
    )
  })

  it('lose nothing that they kept, and bring each once and in its order, to the book itself', async () => {
    await fc.assert(
      fc.asyncProperty(anyMoves(30), (moves) => playTablets(moves, testNow, realScene)),
      { numRuns: forLong(5, 100) },
    )
  })
})
