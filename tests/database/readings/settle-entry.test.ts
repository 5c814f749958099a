import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import type { Caller } from '@/lib/kitchen/caller'
import { takeEntries, type EntryAnswer } from '@/lib/kitchen/intake/take-entries'
import { currentReadings } from '@/lib/kitchen/readings/current-readings'
import { listKeptAside } from '@/lib/kitchen/readings/list-kept-aside'
import { settleEntry } from '@/lib/kitchen/readings/settle-entry'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { getBatch } from '@/lib/kitchen/shifts/get-batch'
import { makeApprovedTrial, type ApprovedTrial } from '../../support/approved-trial'
import { makeBakery, refusalOf, valueOf, testNow, type TestBakery } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'
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
  trial = await makeApprovedTrial(bakery)
  batchId = trial.batches[0]!.batchId
  valueOf(await beginBatch.call(bakery.early.caller, { batchId, seenRevision: 1, cleanDownDone: false }))
})

const reading = (change: Record<string, unknown> = {}) => ({
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
const correction = (supersedesId: string, change: Record<string, unknown> = {}) => ({
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
const send = async (...entries: object[]) => valueOf(await takeEntries.call(bakery.head.caller, { entries })).entries
/** Sends entries of which the last one is kept aside, and names it. */
async function sendAside(...entries: object[]): Promise<{ entryId: string; hash: string }> {
  const last: EntryAnswer | undefined = (await send(...entries)).at(-1)
  if (last?.outcome !== 'aside') throw new Error(`not aside: ${last?.outcome}`)
  return { entryId: last.id, hash: last.hash }
}
/** What the list of what is kept aside says of an entry; it holds few here, all on its first page. */
const keptAside = async (which: { entryId: string; hash: string }) =>
  valueOf(await listKeptAside.call(bakery.head.caller, {})).rows.find(
    ({ entryId, hash }) => entryId === which.entryId && hash === which.hash,
  )
/** Settles an entry as somebody does who has just looked at what stands where it belongs. */
const settle = async (which: { entryId: string; hash: string }, take: boolean, caller: Caller = bakery.head.caller) =>
  settleEntry.call(caller, {
    ...which,
    take,
    seenReadingId: (await keptAside(which))?.standing?.id ?? null,
    reason: 'weighed again',
  })
const holding = async () =>
  currentReadings(await db().reading.findMany({ where: { bakeryId: bakery.bakeryId, batchId } }))
    .map(({ piece, value }) => [piece, value])
    .sort()
const toSettle = async () =>
  valueOf(await getBatch.call(bakery.early.caller, { batchId })).gaps.filter(({ kind }) => kind === 'to-settle')

async function mustAgree(): Promise<void> {
  const { byTable, byReadings } = await placesTwice()
  expect(byTable).toEqual(byReadings)
}

describe('an entry that is taken', () => {
  it('corrects what holds in its place, with the reason, and nothing waits any more', async () => {
    const there = reading()
    const late = reading({ value: '430' })
    const aside = await sendAside(there, late)
    expect(await toSettle()).toEqual([{ kind: 'to-settle', count: 1 }])
    const { readingId } = valueOf(await settle(aside, true))
    expect(await holding()).toEqual([[1, 430]])
    expect(await db().reading.findFirstOrThrow({ where: { id: readingId! } })).toMatchObject({
      supersedesId: there.id,
      reason: 'weighed again',
      personId: bakery.head.personId,
      valueEntered: '430',
    })
    expect(await db().settledEntry.findMany({ where: { entryId: aside.entryId } })).toMatchObject([
      { hash: aside.hash, readingId, reason: 'weighed again', settledById: bakery.head.personId, at: testNow },
    ])
    const record = await db().auditEntry.findFirstOrThrow({
      where: { bakeryId: bakery.bakeryId, action: 'readings.settle-entry', targetId: aside.entryId },
    })
    expect(JSON.parse(record.entryText)).toMatchObject({
      before: { hash: aside.hash, sentBy: 'Henk', value: '430' },
      after: { reading: readingId },
      reason: 'weighed again',
    })
    expect(await toSettle()).toEqual([])
    await mustAgree()
    // A device that gives it back after a restore is answered as before.
    expect(await send(late)).toMatchObject([{ outcome: 'aside', id: aside.entryId, hash: aside.hash }])
  })

  it('is a reading of its own where its place is free by now, and where its id was another’s', async () => {
    const there = reading()
    const aside = await sendAside(there, reading({ value: '430' }))
    await send(correction(there.id, { piece: 2 }))
    valueOf(await settle(aside, true))
    const clash = await sendAside({ ...there, piece: 3, value: '440' })
    valueOf(await settle(clash, true))
    expect(await holding()).toEqual([
      [1, 430],
      [2, 421.5],
      [3, 440],
    ])
    await mustAgree()
  })

  it('corrects the last of a chain when its reading was corrected meanwhile', async () => {
    const there = reading()
    const second = correction(there.id)
    const aside = await sendAside(
      there,
      second,
      correction(second.id, { value: '422' }),
      correction(there.id, { value: '450', piece: 4 }),
    )
    valueOf(await settle(aside, true))
    expect(await holding()).toEqual([[4, 450]])
    await mustAgree()
  })

  it('corrects its own reading, and not another one that was taken under the same id', async () => {
    const there = reading()
    const clash = await sendAside(there, { ...there, piece: 3, value: '440' })
    valueOf(await settle(clash, true))
    const aside = await sendAside(correction(there.id), correction(there.id, { value: '423' }))
    valueOf(await settle(aside, true))
    expect(await holding()).toEqual([
      [1, 423],
      [3, 440],
    ])
  })

  it('waits for the reading that it corrects, when that is aside itself', async () => {
    const late = reading({ value: '430' })
    const first = await sendAside(reading(), late)
    const second = await sendAside(correction(late.id, { value: '431' }))
    expect(refusalOf(await settle(second, true))).toBe('settle-reading-first')
    valueOf(await settle(first, true))
    valueOf(await settle(second, true))
    expect(await holding()).toEqual([[1, 431]])
    await mustAgree()
  })

  it('is looked at, so that an odd value is taken and marked', async () => {
    const aside = await sendAside(reading(), reading({ value: '9999' }))
    valueOf(await settle(aside, true))
    expect(await holding()).toEqual([[1, 9999]])
    expect(valueOf(await getBatch.call(bakery.early.caller, { batchId })).gaps).toContainEqual(
      expect.objectContaining({ kind: 'outside', value: 9999 }),
    )
  })

  it('does not push another reading out of the place that it moves to', async () => {
    const there = reading()
    const aside = await sendAside(
      there,
      correction(there.id, { piece: 2 }),
      reading({ piece: 3 }),
      correction(there.id, { piece: 3 }),
    )
    expect(refusalOf(await settle(aside, true))).toBe('reading-there')
    expect(await toSettle()).toEqual([{ kind: 'to-settle', count: 1 }])
  })
})

it.each([
  ['no number', { value: 'heavy' }],
  ['an amount of something else', { unit: '°C' }],
  ['of a piece that is not there', { piece: 9000 }],
])('an entry that is %s is not taken, which is said as a whole, and can be left', async (_, change) => {
  const there = reading()
  const aside = await sendAside(there, correction(there.id), correction(there.id, change))
  expect(refusalOf(await settle(aside, true))).toBe('entry-not-possible')
  expect(await holding()).toEqual([[1, 421.5]])
  valueOf(await settle(aside, false))
})

it('an entry that is left stays aside, with the reason, and nothing waits for it', async () => {
  const aside = await sendAside(reading(), reading({ value: '430' }))
  expect(valueOf(await settle(aside, false))).toEqual({ readingId: null })
  expect(await holding()).toEqual([[1, 412.5]])
  expect(await db().entryToSettle.count({ where: { entryId: aside.entryId } })).toBe(1)
  expect(await toSettle()).toEqual([])
})

it('an entry is settled once, also by two at one moment', async () => {
  const aside = await sendAside(reading(), reading({ value: '430' }))
  const both = await Promise.all([settle(aside, true), settle(aside, false, bakery.owner.caller)])
  expect(both.filter(({ ok }) => ok)).toHaveLength(1)
  // Taken or left: the reading in the book says which of the two came first.
  const meanwhile = (await holding())[0]?.[1] === 430 ? 'entry-taken-meanwhile' : 'entry-left-meanwhile'
  expect(refusalOf(both.find(({ ok }) => !ok)!)).toBe(meanwhile)
  expect(refusalOf(await settle(aside, true))).toBe(meanwhile)
})

it('whoever comes second is told who settled it, when, how and why', async () => {
  const first = await sendAside(reading(), reading({ value: '430' }))
  const second = await sendAside(reading({ value: '431' }))
  valueOf(await settle(first, true))
  valueOf(await settle(second, false, bakery.owner.caller))
  expect(await settle(first, false, bakery.owner.caller)).toMatchObject({
    refusal: {
      code: 'entry-taken-meanwhile',
      facts: { who: 'Henk', at: '2 Mar 2026, 05:00', reason: 'weighed again' },
    },
  })
  expect(await settle(second, true)).toMatchObject({
    refusal: { code: 'entry-left-meanwhile', facts: { who: 'Olga', at: '2 Mar 2026, 05:00', reason: 'weighed again' } },
  })
})

it('a reading that nobody looked at is not pushed out of the book', async () => {
  const there = reading()
  const aside = await sendAside(there, reading({ value: '430' }))
  const asSeen = { ...aside, take: true, reason: 'weighed again' }
  expect(refusalOf(await settleEntry.call(bakery.head.caller, { ...asSeen, seenReadingId: null }))).toBe('stale')
  await send(correction(there.id, { value: '422' }))
  expect(await settleEntry.call(bakery.head.caller, { ...asSeen, seenReadingId: there.id })).toMatchObject({
    refusal: { code: 'stale', facts: { who: 'Henk' } },
  })
  expect(await holding()).toEqual([[1, 422]])
  // What is left pushes nothing out, whatever was looked at.
  valueOf(await settleEntry.call(bakery.head.caller, { ...asSeen, take: false, seenReadingId: there.id }))
  const free = await sendAside(reading({ value: '440' }))
  const last = (await keptAside(free))?.standing?.id
  await send(correction(last!, { piece: 2 }))
  expect(
    refusalOf(await settleEntry.call(bakery.head.caller, { ...free, take: true, reason: 'late', seenReadingId: last })),
  ).toBe('stale-moved-on')
  expect(await holding()).toEqual([[2, 421.5]])
})

it('is for whoever may correct any reading of this bakery, and needs a reason', async () => {
  const aside = await sendAside(reading(), reading({ value: '430' }))
  expect(refusalOf(await settle(aside, true, bakery.early.caller))).toBe('not-allowed')
  expect(refusalOf(await settle(aside, true, neighbour.owner.caller))).toBe('not-found')
  expect(refusalOf(await settle({ ...aside, hash: 'a'.repeat(64) }, true))).toBe('not-found')
  expect(
    refusalOf(await settleEntry.call(bakery.head.caller, { ...aside, take: true, seenReadingId: null, reason: ' ' })),
  ).toBe('invalid reason:missing')
  expect(await toSettle()).toEqual([{ kind: 'to-settle', count: 1 }])
})

it('nothing is taken into a trial that is over, but what waits can be left', async () => {
  const aside = await sendAside(reading(), reading({ value: '430' }))
  await db().trial.update({
    where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: trial.trialId } },
    data: { state: 'closed' },
  })
  expect(refusalOf(await settle(aside, true))).toBe('trial-closed')
  valueOf(await settle(aside, false))
})

it('an entry that is not what was sent is not taken', async () => {
  const aside = await sendAside(reading(), reading({ value: '430' }))
  await connected(database.superUrl, (client) =>
    client.query(
      `ALTER TABLE entry_to_settle DISABLE TRIGGER USER; UPDATE entry_to_settle SET text = replace(text, '"430"', '"530"') WHERE entry_id = '${aside.entryId}'; ALTER TABLE entry_to_settle ENABLE TRIGGER USER`,
    ),
  )
  expect(await keptAside(aside)).toMatchObject({ entered: null, standing: null, bar: 'damaged-text' })
  expect(refusalOf(await settle(aside, true))).toBe('damaged-text')
  expect(await holding()).toEqual([[1, 412.5]])
  // It would wait for ever otherwise.
  valueOf(await settle(aside, false))
  expect(await toSettle()).toEqual([])
  const record = await db().auditEntry.findFirstOrThrow({
    where: { bakeryId: bakery.bakeryId, action: 'readings.settle-entry', targetId: aside.entryId },
  })
  expect(JSON.parse(record.entryText)).toMatchObject({ before: { unread: 'damaged' }, after: 'left aside' })
})
