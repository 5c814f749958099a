import fc from 'fast-check'
import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, describe, it } from 'vitest'
import { db } from '@/lib/db/client'
import { takeEntries } from '@/lib/kitchen/intake/take-entries'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { makeApprovedTrial } from '@/tests/support/approved-trial'
import { makeBakery, testNow, valueOf, type TestBakery } from '@/tests/support/bakery'
import { freshDatabase, type FreshDatabase } from '@/tests/support/database'
import { forLong } from '@/tests/support/long'
import { modelBook } from '@/tests/support/tablets/model-book'
import { anyMoves, playTablets, type Scene } from '@/tests/support/tablets/three-tablets'

let database: FreshDatabase
let bakery: TestBakery
let people: Scene['people']

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
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
    async book(_address, body) {
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
    },
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

describe('three tablets in any order of taps, cuts, lost answers, jumps of the clock and restarts', () => {
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
