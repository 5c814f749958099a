import fc from 'fast-check'
import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { findActor } from '@/lib/auth/find-actor'
import { db } from '@/lib/db/client'
import { inTransaction } from '@/lib/db/transaction'
import { hashOfText } from '@/lib/documents/hash-of-text'
import { readReading } from '@/lib/documents/reading/read-reading'
import type { Caller } from '@/lib/kitchen/caller'
import { takeEntries, type EntryAnswer } from '@/lib/kitchen/intake/take-entries'
import { getResult } from '@/lib/kitchen/amendments/get-result'
import { gapsOfTrial } from '@/lib/kitchen/readings/gaps-of-trial'
import { readingsHandler } from '@/lib/kitchen/readings/readings-handler'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { getBatch } from '@/lib/kitchen/shifts/get-batch'
import { moveBatch } from '@/lib/kitchen/shifts/move-batch'
import { statementsOf } from '../../support/statements-of'
import { makeApprovedTrial, type ApprovedTrial } from '../../support/approved-trial'
import { callerOf, makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'
import { forLong } from '../../support/long'
import { placesTwice } from '../../support/places-twice'

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery
let trial: ApprovedTrial
let batchId: string

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
  neighbour = await makeBakery('Next Door')
})
afterAll(() => database.drop())
beforeEach(async () => {
  trial = await makeApprovedTrial(bakery, { pieces: 20 })
  batchId = trial.batches[0]!.batchId
  await begin(0)
})

type Sent = { kind: string; id: string; [field: string]: unknown }

const begin = async (at: number) =>
  void valueOf(
    await beginBatch.call(bakery.early.caller, {
      batchId: trial.batches[at]!.batchId,
      seenRevision: 1,
      cleanDownDone: true,
    }),
  )
/** A reading of the loaf weight of the first piece, changed as the test says. */
const reading = (change: Record<string, unknown> = {}): Sent => ({
  kind: 'reading',
  id: uuid(),
  batchId,
  measureId: trial.measures['loaf-mass'],
  piece: 1,
  repeat: 1,
  value: '412.5',
  unit: 'g',
  takenAt: testNow.toISOString(),
  ...change,
})
const correction = (supersedesId: string, change: Record<string, unknown> = {}): Sent => ({
  kind: 'correction',
  id: uuid(),
  supersedesId,
  piece: 1,
  repeat: 1,
  value: '421.5',
  unit: 'g',
  reason: 'typed it wrong',
  ...change,
})
const send = async (entries: readonly unknown[], caller: Caller = bakery.early.caller) =>
  valueOf(await takeEntries.call(caller, { entries })).entries
const told = (answers: readonly EntryAnswer[]) =>
  answers.map((each) => (each.outcome === 'kept' ? (each.isAgain ? 'again' : 'kept') : refusedWith(each.refusal)))
const refusedWith = ({ code, problems }: { code: string; problems: readonly { path: string; code: string }[] }) =>
  [code, ...problems.map((each) => `${each.path}:${each.code}`)].join(' ')
const readings = () =>
  db().reading.findMany({ where: { bakeryId: bakery.bakeryId, trialId: trial.trialId }, orderBy: { id: 'asc' } })
const aside = () =>
  db().entryToSettle.findMany({
    where: { bakeryId: bakery.bakeryId, trialId: trial.trialId },
    orderBy: { entryId: 'asc' },
  })
const entries = () =>
  db().auditEntry.findMany({
    where: { bakeryId: bakery.bakeryId, action: 'intake.take-entries' },
    orderBy: { number: 'asc' },
  })

/** How many rows each table of the database has. */
async function rowsOfAllTables(): Promise<Record<string, number>> {
  return connected(database.superUrl, async (client) => {
    const { rows } = await client.query<{ name: string }>(
      `SELECT tablename AS name FROM pg_tables WHERE schemaname = 'public' ORDER BY 1`,
    )
    const counted: Record<string, number> = {}
    for (const { name } of rows)
      counted[name] = (await client.query<{ n: number }>(`SELECT count(*)::int AS n FROM "${name}"`)).rows[0]!.n
    return counted
  })
}

describe('a place that is read whole', () => {
  it('takes nothing more from a device, which keeps what it has; nor within the request that filled it', async () => {
    const volume = (repeat: number, value: string) =>
      reading({ measureId: trial.measures['loaf-volume'], unit: 'mL', repeat, value })
    const sent = [volume(1, '1880'), volume(2, '1885'), volume(3, '2400')]
    expect(told(await send(sent))).toEqual(['kept', 'kept', 'no-further-repeat'])
    expect(told(await send([...sent, volume(4, '2400')]))).toEqual([
      'again',
      'again',
      'no-further-repeat',
      'no-further-repeat',
    ])
    expect((await readings()).map(({ value }) => value)).toEqual([1880, 1885])
    expect(await aside()).toEqual([])
  })
})

describe('a request of entries', () => {
  it('keeps each one, and writes one entry into the record, which holds their hashes', async () => {
    const before = (await entries()).length
    const sent = Array.from({ length: 20 }, (_, i) => reading({ piece: i + 1 }))
    const answers = await send(sent)
    expect(told(answers)).toEqual(sent.map(() => 'kept'))
    expect(answers.map(({ id }) => id)).toEqual(sent.map(({ id }) => id))
    expect((await readings()).map(({ id, contentHash }) => [id, contentHash])).toEqual(
      answers.map((each) => [each.id, each.outcome === 'kept' && each.hash]).sort(),
    )
    const record = (await entries()).slice(before)
    expect(record).toHaveLength(1)
    expect(
      (JSON.parse(record[0]!.entryText) as { after: { kept: { id: string; hash: string }[] } }).after.kept.map(
        ({ id, hash }) => [id, hash],
      ),
    ).toEqual(answers.map((each) => [each.id, each.outcome === 'kept' && each.hash]))
  })

  it('answers what comes again the same and writes no row of any table', async () => {
    await begin(1)
    const first = reading()
    const sent = [
      first,
      correction(first.id),
      reading({ piece: 2 }),
      reading({ piece: 2, value: '500' }),
      ...Array.from({ length: 18 }, (_, i) => reading({ batchId: trial.batches[1]!.batchId, piece: i + 1 })),
    ]
    const answers = await send(sent)
    expect(told(answers).slice(0, 4)).toEqual(['kept', 'kept', 'kept', 'aside-place-taken'])
    const before = await rowsOfAllTables()
    const again = await send(sent)
    expect(again).toEqual(answers.map((each) => (each.outcome === 'kept' ? { ...each, isAgain: true } : each)))
    await send([...sent].reverse(), bakery.head.caller)
    expect(await rowsOfAllTables()).toEqual(before)
  })

  it('refuses by itself what is at fault and keeps the rest', async () => {
    const there = reading()
    const answers = await send([
      there,
      reading({ piece: 99 }),
      reading({ value: 'about 400', piece: 2 }),
      { kind: 'photo', id: uuid() },
      { kind: '__proto__' },
      {},
      reading({ piece: 3, cost: 1 }),
      reading({ piece: 4, value: '9999' }),
      reading({ piece: 5 }),
      there,
      correction(uuid()),
    ])
    expect(told(answers)).toEqual([
      'kept',
      'invalid piece:too-big',
      'invalid value:not-a-number',
      'invalid kind:wrong-choice',
      'invalid kind:wrong-choice',
      'invalid kind:wrong-choice',
      'invalid cost:unknown-field',
      'odd-reading value:outside-usual',
      'kept',
      'again',
      'not-found',
    ])
    expect(await readings()).toHaveLength(2)
  })

  it('follows its entries in their order: a reading, its correction, and the place that this leaves free', async () => {
    const first = reading()
    const moved = correction(first.id, { piece: 2 })
    const answers = await send([
      first,
      moved,
      reading({ value: '400' }),
      correction(moved.id, { piece: 3 }),
      reading({ piece: 2, value: '401' }),
    ])
    expect(told(answers)).toEqual(['kept', 'kept', 'kept', 'kept', 'kept'])
    const { byTable, byReadings } = await placesTwice()
    expect(byTable).toEqual(byReadings)
  })

  it('asks for another repeat and for a third as a reading alone does', async () => {
    const volume = (repeat: number, value: string) =>
      reading({ measureId: trial.measures['loaf-volume'], unit: 'mL', repeat, value })
    const answers = await send([volume(1, '1880'), volume(2, '1940'), volume(3, '1890')])
    expect(answers.map((each) => each.outcome === 'kept' && each.about.needs)).toEqual(['repeat', 'third', null])
  })

  it('is for whoever may log readings, in their own bakery', async () => {
    expect(refusalOf(await takeEntries.call(callerOf(null), { entries: [reading()] }))).toBe('not-signed-in')
    expect(told(await send([reading()], neighbour.owner.caller))).toEqual(['not-found'])
    const mine = reading()
    await send([mine])
    expect(told(await send([correction(mine.id)], neighbour.owner.caller))).toEqual(['not-found'])
    expect(told(await send([correction(mine.id)], bakery.late.caller))).toEqual(['correction-not-yours'])
    expect(await readings()).toHaveLength(1)
  })

  it('takes 1 to 100 of them and nothing beside', async () => {
    expect(refusalOf(await takeEntries.call(bakery.early.caller, { entries: [] }))).toMatch(/^invalid entries:/)
    expect(
      refusalOf(await takeEntries.call(bakery.early.caller, { entries: Array.from({ length: 101 }, () => reading()) })),
    ).toMatch(/^invalid entries:/)
    expect(refusalOf(await takeEntries.call(bakery.early.caller, { entries: [reading()], more: 1 }))).toBe(
      'invalid more:unknown-field',
    )
  })
})

it('a hundred entries ask the database as often as two do', async () => {
  trial = await makeApprovedTrial(bakery, { pieces: 100 })
  batchId = trial.batches[0]!.batchId
  await begin(0)
  const actor = await findActor(db(), { kind: 'desk', sessionSecret: bakery.early.sessionSecret }, testNow)
  if (actor?.kind !== 'desk') throw new Error('nobody is signed in')
  const asked = async (sent: readonly Sent[]) => {
    let count = 0
    await inTransaction(async (tx) => {
      // Everything that is called on a transaction is a statement, of its own or of one of its tables.
      const counting = <Of extends object>(of: Of): Of =>
        new Proxy(of, {
          get(target, name) {
            const part: unknown = Reflect.get(target, name)
            if (typeof part === 'function') {
              count++
              return part.bind(target) as unknown
            }
            return typeof part === 'object' && part !== null ? counting(part) : part
          },
        })
      const taken = await readingsHandler.take({
        tx: counting(tx),
        actor,
        now: testNow,
        needsWayBack: false,
        entries: sent,
      })
      expect(taken.every(({ outcome }) => outcome === 'kept')).toBe(true)
    })
    return count
  }
  const pair = (piece: number) => {
    const wrong = reading({ piece })
    return [wrong, correction(wrong.id, { piece })]
  }
  const few = await asked(pair(1))
  expect(few).toBeLessThan(16)
  expect(await asked(Array.from({ length: 50 }, (_, i) => pair(i + 2)).flat())).toBe(few)
})

it('one entry that nothing is wrong with takes ten statements, its transaction, who it is and the record included', async () => {
  trial = await makeApprovedTrial(bakery)
  batchId = trial.batches[0]!.batchId
  await begin(0)
  const keep = async (piece: number) => {
    const { answer, statements } = await statementsOf(() =>
      takeEntries.call(bakery.early.caller, { entries: [reading({ piece })] }),
    )
    expect(valueOf(answer).entries).toMatchObject([{ outcome: 'kept', isAgain: false }])
    return statements
  }
  await keep(1)
  expect(await keep(2)).toBeLessThanOrEqual(10)
})

describe('an entry that cannot go where it belongs', () => {
  it('is kept whole beside who sent it, when and why: the place taken, corrected meanwhile, the id taken', async () => {
    const there = reading()
    const right = correction(there.id)
    await send([there, right])
    const [late, second, clash] = [
      reading({ value: '500' }),
      correction(there.id, { value: '430' }),
      { ...there, value: '413' },
    ]
    const ofAside = correction(late.id, { value: '501' })
    const answers = await send([late, second, clash, ofAside, late], bakery.head.caller)
    expect(told(answers)).toEqual([
      'aside-place-taken',
      'aside-corrected',
      'aside-id-taken',
      'aside-of-aside',
      'aside-place-taken',
    ])
    const rows = await aside()
    expect(rows).toHaveLength(4)
    for (const [entry, why] of [
      [late, 'place_taken'],
      [second, 'corrected_meanwhile'],
      [clash, 'id_taken'],
      [ofAside, 'reading_aside'],
    ] as const) {
      const row = rows.find(({ entryId, why: given }) => entryId === entry.id && given === why)!
      expect(row).toMatchObject({ kind: entry.kind, batchId, sentById: bakery.head.personId, receivedAt: testNow })
      expect(readReading(row.text, row.hash)).toMatchObject({
        outcome: 'read',
        reading: { value: entry.value, unit: 'g', piece: 1, repeat: 1 },
      })
      expect(answers).toContainEqual(
        expect.objectContaining({ outcome: 'aside', id: entry.id, hash: hashOfText(row.text) }),
      )
    }
    expect(await readings()).toHaveLength(2)
  })

  it('stays aside when its place is free again, so that it is answered the same for ever', async () => {
    const there = reading()
    const late = reading({ value: '500' })
    const first = await send([there, late])
    await send([correction(there.id, { piece: 2 })])
    expect(await send([late])).toEqual(first.slice(1))
    expect(await aside()).toHaveLength(1)
  })

  it('stands among what is missing of its batch and its trial, in the record too, until it is settled', async () => {
    await send([reading(), reading({ value: '500' }), reading({ value: '501' })])
    const kept = { kind: 'to-settle', count: 2 }
    expect(valueOf(await getBatch.call(bakery.early.caller, { batchId })).gaps.at(-1)).toEqual(kept)
    await db().batch.update({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: batchId } },
      data: { state: 'baked' },
    })
    expect(refusalOf(await moveBatch.call(bakery.early.caller, { batchId, seenRevision: 2, to: 'measured' }))).toBe(
      'gaps-without-reason why:missing',
    )
    valueOf(
      await moveBatch.call(bakery.early.caller, {
        batchId,
        seenRevision: 2,
        to: 'measured',
        why: 'nobody knows which is right',
      }),
    )
    const moved = await db().auditEntry.findFirstOrThrow({
      where: { bakeryId: bakery.bakeryId, action: 'shifts.move-batch', targetId: batchId },
      orderBy: { number: 'desc' },
    })
    expect(moved.entryText).toContain('entries kept aside and not settled: 2')
    expect(valueOf(await getResult.call(bakery.head.caller, { trialId: trial.trialId })).gaps).toMatchObject([
      { batchId, gaps: expect.arrayContaining([kept]) as unknown },
    ])
    expect(await gapsOfTrial(db(), bakery.bakeryId, trial.trialId)).toMatchObject([
      { batchId, gaps: expect.arrayContaining([kept]) as unknown },
    ])
  })

  it('can be neither changed nor taken out, not by the app and not by the owner of the tables', async () => {
    await send([reading(), reading({ value: '500' })])
    for (const url of [database.appUrl, database.ownerUrl]) {
      await connected(url, async (client) => {
        for (const table of ['entry_to_settle', 'settled_entry'])
          await expect(client.query(`TRUNCATE ${table} CASCADE`)).rejects.toThrow()
        await expect(client.query(`UPDATE entry_to_settle SET why = 'id_taken'`)).rejects.toThrow()
        await expect(client.query('DELETE FROM entry_to_settle')).rejects.toThrow()
      })
    }
    expect(await aside()).toHaveLength(1)
  })
})

describe('an entry that the database refuses', () => {
  it('is refused by itself, with what rests on it, and the rest is kept', async () => {
    await connected(database.superUrl, (client) =>
      client.query(`CREATE FUNCTION refuse_411() RETURNS trigger LANGUAGE plpgsql AS $$ BEGIN RAISE EXCEPTION 'no' USING ERRCODE = 'P0001'; END $$;
        CREATE TRIGGER refuse_411 BEFORE INSERT ON reading FOR EACH ROW WHEN (NEW.value_entered = '411') EXECUTE FUNCTION refuse_411()`),
    )
    try {
      const bad = [reading({ piece: 3, value: '411' }), reading({ piece: 14, value: '411' })]
      const sent = Array.from(
        { length: 20 },
        (_, i) => bad.find(({ piece }) => piece === i + 1) ?? reading({ piece: i + 1 }),
      )
      const answers = await send([...sent, bad[0], correction(bad[0]!.id, { piece: 3 })])
      expect(told(answers)).toEqual([
        ...sent.map((entry) => (bad.includes(entry) ? 'entry-not-kept' : 'kept')),
        'entry-not-kept',
        'entry-not-kept',
      ])
      expect((await readings()).map(({ id }) => id)).toEqual(
        sent
          .filter((entry) => !bad.includes(entry))
          .map(({ id }) => id)
          .sort(),
      )
      // Nothing of it is in the book, so a device goes on sending it.
      expect(JSON.stringify(JSON.parse((await entries()).at(-1)!.entryText))).not.toContain(bad[0]!.id)
    } finally {
      await connected(database.superUrl, (client) =>
        client.query('DROP TRIGGER refuse_411 ON reading; DROP FUNCTION refuse_411'),
      )
    }
  })

  it('is kept aside when another batch got its id at the same moment', async () => {
    await begin(1)
    const contested = uuid()
    const both = (
      await Promise.all(
        [0, 1].map((at) =>
          send([
            reading({ piece: 2, batchId: trial.batches[at]!.batchId }),
            reading({ id: contested, batchId: trial.batches[at]!.batchId }),
          ]),
        ),
      )
    ).map(told)
    expect(both.map(([first]) => first)).toEqual(['kept', 'kept'])
    expect(both.map(([, second]) => second).sort()).toEqual(['aside-id-taken', 'kept'])
    expect([(await readings()).length, (await aside()).length]).toEqual([3, 1])
  })
})

it('two requests at one moment with the same entries keep each once', async () => {
  const there = reading()
  const sent = [
    there,
    correction(there.id),
    ...Array.from({ length: 18 }, (_, i) => reading({ piece: i + 2 })),
    reading({ value: '500' }),
  ]
  const answers = (await Promise.all([send(sent), send(sent), send([...sent].reverse(), bakery.early.caller)])).map(
    told,
  )
  expect(answers[0]!.filter((each, i) => each === 'kept' && answers[1]![i] === 'kept')).toEqual([])
  const kept = await readings()
  expect(new Set(kept.map(({ id }) => id)).size).toBe(kept.length)
  const { byTable, byReadings } = await placesTwice()
  expect(byTable).toEqual(byReadings)
})

/**
 * What a device may have in its outbox: readings of few places, so that places are taken, the same id with other content,
 * and corrections of what stands before them in the outbox, also twice.
 */
const outbox = fc.array(
  fc.record({
    piece: fc.integer({ min: 1, max: 3 }),
    value: fc.integer({ min: 400, max: 402 }),
    dough: fc.integer({ min: 0, max: 1 }),
    corrects: fc.option(fc.nat(9), { freq: 2 }),
    reuses: fc.option(fc.nat(9), { freq: 8 }),
  }),
  { minLength: 2, maxLength: 10 },
)
/** Which entries a request brings, by their place in the outbox. */
const requests = fc.array(fc.array(fc.nat(9), { minLength: 1, maxLength: 6 }), { maxLength: 6 })

/** Begins a trial and draws up what is in the outbox, over two of its doughs. */
async function fillOutbox(
  drawn: readonly { piece: number; value: number; dough: number; corrects: number | null; reuses: number | null }[],
): Promise<Sent[]> {
  trial = await makeApprovedTrial(bakery)
  batchId = trial.batches[0]!.batchId
  await begin(0)
  await begin(1)
  const sent: Sent[] = []
  for (const { piece, value, dough, corrects, reuses } of drawn) {
    const id = reuses !== null && sent.length > 0 ? sent[reuses % sent.length]!.id : uuid()
    const wrong = corrects === null || sent.length === 0 ? null : sent[corrects % sent.length]!.id
    const change = { id, piece, value: String(value) }
    sent.push(
      wrong === null || wrong === id
        ? reading({ ...change, batchId: trial.batches[dough]!.batchId })
        : correction(wrong, change),
    )
  }
  return sent
}

/** Each entry that was answered as kept or aside is in the book or aside, once, and nothing else is; and places are told as they are. */
async function mustBeThereOnce(answers: readonly EntryAnswer[]): Promise<void> {
  const there = [
    ...(await readings()).map(({ id, contentHash }) => `${id} ${contentHash}`),
    ...(await aside()).map(({ entryId, hash }) => `${entryId} ${hash}`),
  ]
  expect(new Set(there)).toEqual(
    new Set(
      answers.map((answer) =>
        answer.outcome === 'refused' ? refusedWith(answer.refusal) : `${answer.id} ${answer.hash}`,
      ),
    ),
  )
  expect(there).toHaveLength(new Set(there).size)
  const { byTable, byReadings } = await placesTwice()
  expect(byTable).toEqual(byReadings)
}

it('any order and any repetition of entries ends with each of them in the book or aside, once', async () => {
  await fc.assert(
    fc.asyncProperty(outbox, requests, async (drawn, split) => {
      const sent = await fillOutbox(drawn)
      const answered = new Map<number, EntryAnswer>()
      const deliver = async (places: readonly number[]) => {
        for (const [at, answer] of (await send(places.map((place) => sent[place]))).entries()) {
          const earlier = answered.get(places[at]!)
          // What was answered once is answered the same from then on; what a correction rests on may still come.
          if (earlier && earlier.outcome !== 'refused')
            expect(answer).toEqual({
              ...earlier,
              ...(earlier.outcome === 'kept' && answer.outcome === 'kept'
                ? { isAgain: true, about: answer.about }
                : {}),
            })
          answered.set(places[at]!, answer)
        }
      }
      for (const places of split) await deliver(places.map((place) => place % sent.length))
      // At last the outbox is emptied in its own order, as a device does until everything is answered.
      await deliver(sent.map((_, place) => place))
      await mustBeThereOnce([...answered.values()])
    }),
    { numRuns: forLong(12, 300), seed: 20261130 },
  )
})

it('so do requests of several devices at one moment', async () => {
  await fc.assert(
    fc.asyncProperty(outbox, requests, async (drawn, split) => {
      const sent = await fillOutbox(drawn)
      const callers = [bakery.early.caller, bakery.head.caller, bakery.owner.caller]
      // A shift baker corrects only their own, so the head baker empties the outbox.
      await Promise.all(
        split.map((places, at) =>
          send(
            places.map((place) => sent[place % sent.length]),
            callers[at % callers.length],
          ),
        ),
      )
      await mustBeThereOnce(await send(sent, bakery.head.caller))
    }),
    { numRuns: forLong(8, 150), seed: 20261201 },
  )
})
