import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { takeEntries, type EntryAnswer } from '@/lib/kitchen/intake/take-entries'
import { writeCursor } from '@/lib/kitchen/page-cursor'
import { listKeptAside } from '@/lib/kitchen/readings/list-kept-aside'
import { settleEntry } from '@/lib/kitchen/readings/settle-entry'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { getShift } from '@/lib/kitchen/shifts/get-shift'
import { makeApprovedTrial, type ApprovedTrial } from '../../support/approved-trial'
import { makeBakery, refusalOf, testNow, valueOf, type TestBakery, type TestPerson } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import { statementsOf } from '@/tests/support/statements-of'

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
/** Sends entries as somebody, at a minute of the test's hour. */
async function send(by: TestPerson, minute: number, ...entries: object[]): Promise<EntryAnswer[]> {
  const now = () => new Date(testNow.getTime() + minute * 60_000)
  return valueOf(await takeEntries.call({ ...by.caller, now }, { entries })).entries
}
/** An entry that is aside because its place is taken, for each minute: the pieces after the first are free of it. */
async function putAside(count: number): Promise<string[]> {
  await send(bakery.early, 0, reading())
  const late = Array.from({ length: count }, (_, at) => reading({ value: String(400 + at) }))
  for (let from = 0; from < count; from += 100) await send(bakery.early, 1, ...late.slice(from, from + 100))
  return late.map(({ id }) => id).sort()
}
const list = async (after?: unknown) => valueOf(await listKeptAside.call(bakery.head.caller, { after }))

it('is for whoever may settle, in this bakery', async () => {
  await putAside(1)
  expect(refusalOf(await listKeptAside.call(bakery.early.caller, {}))).toBe('not-allowed')
  expect(refusalOf(await listKeptAside.call({ ...bakery.head.caller, sessionSecret: null }, {}))).toBe('not-signed-in')
  expect(valueOf(await listKeptAside.call(neighbour.owner.caller, {}))).toEqual({
    rows: [],
    count: 0,
    after: null,
    isFirst: true,
  })
  expect(valueOf(await listKeptAside.call(bakery.owner.caller, {})).count).toBe(1)
})

it('shows an entry beside what stands in its place, with who and when of both', async () => {
  const there = reading({ takenAt: new Date(testNow.getTime() - 600_000).toISOString() })
  const late = reading({ value: '0.43', unit: 'kg' })
  await send(bakery.late, 0, there)
  await send(bakery.early, 7, late)
  expect(await list()).toEqual({
    count: 1,
    after: null,
    isFirst: true,
    rows: [
      {
        entryId: late.id,
        hash: expect.stringMatching(/^[0-9a-f]{64}$/),
        why: 'place_taken',
        receivedAt: new Date(testNow.getTime() + 420_000),
        sentBy: 'Esi',
        batch: { id: batchId, code: trial.batches[0]!.code },
        trial: { number: 1, formula: expect.stringMatching(/^White tin/) },
        entered: {
          value: '0.43',
          unit: 'kg',
          piece: 1,
          repeat: 1,
          factorLevel: null,
          measure: { code: 'loaf-mass', name: expect.any(String), unit: 'g', digits: expect.any(Number) },
          outside: null,
          takenAt: testNow,
          reason: null,
        },
        standing: {
          id: there.id,
          measureId: there.measureId,
          piece: 1,
          factorLevel: null,
          repeat: 1,
          valueEntered: '412.5',
          unitEntered: 'g',
          takenAt: new Date(there.takenAt),
          reason: null,
          by: 'Lars',
        },
        bar: null,
      },
    ],
  })
})

it('shows for a correction what now holds, however often its reading was corrected, and what it is of', async () => {
  const there = reading()
  const second = correction(there.id)
  const last = correction(second.id, { value: '422', reason: 'weighed again' })
  await send(bakery.head, 0, there, second, last, correction(there.id, { value: '450', piece: 4 }))
  const [row] = (await list()).rows
  expect(row).toMatchObject({
    why: 'corrected_meanwhile',
    entered: { value: '450', piece: 4, takenAt: null, reason: 'typed it wrong', measure: { code: 'loaf-mass' } },
    standing: { id: last.id, valueEntered: '422', reason: 'weighed again', by: 'Henk' },
    bar: null,
  })
})

it('says where a correction waits for its own reading, and shows that once it is taken', async () => {
  const late = reading({ value: '430' })
  const [, aside] = await send(bakery.head, 0, reading(), late)
  await send(bakery.head, 1, correction(late.id, { value: '431' }))
  const [first, second] = (await list()).rows
  expect(second).toMatchObject({ why: 'reading_aside', standing: null, bar: 'settle-reading-first' })
  if (aside?.outcome !== 'aside') throw new Error('not aside')
  const { readingId } = valueOf(
    await settleEntry.call(bakery.head.caller, {
      entryId: late.id,
      hash: aside.hash,
      take: true,
      seenReadingId: first?.standing?.id,
      reason: 'the second scale is right',
    }),
  )
  const rows = (await list()).rows
  expect(rows).toHaveLength(1)
  expect(rows[0]).toMatchObject({
    entered: { value: '431' },
    standing: { id: readingId, valueEntered: '430' },
    bar: null,
  })
})

it('says nothing stands there where the place is free by now, and that a trial is over', async () => {
  const there = reading()
  await send(bakery.head, 0, there, reading({ value: '430' }), correction(there.id, { piece: 2 }))
  expect((await list()).rows).toMatchObject([{ standing: null, bar: null }])
  await db().trial.update({
    where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: trial.trialId } },
    data: { state: 'stopped' },
  })
  expect((await list()).rows).toMatchObject([{ standing: null, bar: 'trial-over' }])
})

it('says of a value that it is outside what is usual, and shows one that is no amount as it came', async () => {
  const there = reading()
  await send(bakery.head, 0, there, correction(there.id))
  const odd = (value: string, unit: string) => correction(there.id, { value, unit })
  await send(bakery.head, 1, odd('9999', 'g'))
  await send(bakery.head, 2, odd('heavy', 'g'))
  await send(bakery.head, 3, odd('430', '°C'))
  // Scaled at 480 g: half of that to one and a half times.
  expect((await list()).rows.map(({ entered }) => [entered?.value, entered?.unit, entered?.outside])).toEqual([
    ['9999', 'g', { least: 240, most: 720 }],
    ['heavy', 'g', null],
    ['430', '°C', null],
  ])
})

it('gives a piece the level that its number has, and does not tell which dough it is', async () => {
  const factor = { name: 'bake temperature', levels: ['220 °C', '235 °C'] }
  trial = await makeApprovedTrial(bakery, { factor })
  batchId = trial.batches[0]!.batchId
  valueOf(await beginBatch.call(bakery.early.caller, { batchId, seenRevision: 1, cleanDownDone: false }))
  const there = reading({ factorLevel: '220 °C' })
  await send(bakery.head, 0, there, correction(there.id), correction(there.id, { piece: 2 }))
  const shown = await list()
  expect(shown.rows).toMatchObject([
    { entered: { piece: 2, factorLevel: '235 °C' }, standing: { factorLevel: '220 °C' } },
  ])
  const told = JSON.stringify(shown)
  for (const secret of [...trial.armIds, 'Control', 'milk powder']) expect(told).not.toContain(secret)
})

describe('over its pages', () => {
  it('has each entry once, those of one moment too, also while others are settled, and counts them all', async () => {
    const ids = await putAside(45)
    expect(await list()).toMatchObject({ count: 45, isFirst: true })
    const seen: string[] = []
    let after: string | undefined
    do {
      const page = await list(after)
      seen.push(...page.rows.map(({ entryId }) => entryId))
      after = page.after ?? undefined
      // What was on a page is settled before the next one is opened.
      const [row] = page.rows
      valueOf(
        await settleEntry.call(bakery.head.caller, {
          entryId: row?.entryId,
          hash: row?.hash,
          take: false,
          seenReadingId: null,
          reason: 'a slip',
        }),
      )
    } while (after !== undefined)
    expect(seen).toEqual(ids)
    const left = await list()
    expect(left.count).toBe(42)
    expect(left.rows.map(({ entryId }) => entryId)).not.toContain(ids[0])
  })

  it('begins at the first page with any cursor that is none', async () => {
    await putAside(21)
    const first = await list()
    expect(first.after).not.toBeNull()
    const cursor = (bakeryId: string, name: string, key: (string | number)[]) =>
      writeCursor({ bakeryId, list: name }, key)
    const key = [testNow.toISOString(), uuid(), 'a'.repeat(64)]
    for (const after of [
      '%%%\u0000',
      'a'.repeat(10_000),
      ['a', 'b'],
      cursor(neighbour.bakeryId, 'kept-aside', key),
      cursor(bakery.bakeryId, 'shift', key),
      cursor(bakery.bakeryId, 'kept-aside', []),
      cursor(bakery.bakeryId, 'kept-aside', ['2026-02-31T00:00:00Z', uuid(), 'a']),
      cursor(bakery.bakeryId, 'kept-aside', [testNow.toISOString(), 'no-id', 'a']),
      cursor(bakery.bakeryId, 'kept-aside', [testNow.toISOString(), uuid(), '\u0000']),
    ])
      expect(await list(after)).toEqual(first)
  })

  it('takes no more statements for a full page than for one entry, and one that counts where there are more', async () => {
    await putAside(1)
    const { statements: one } = await statementsOf(() => list())
    expect(one).toBeGreaterThan(4)
    // What it sends first is late as well by now.
    await putAside(18)
    const { statements: full, answer } = await statementsOf(() => list())
    expect(answer.rows).toHaveLength(20)
    expect(full).toBe(one)
    await putAside(20)
    const { statements: more, answer: first } = await statementsOf(() => list())
    expect(first.count).toBe(41)
    expect(more).toBe(one + 1)
  })
})

it('the shift says how many wait, to whoever may settle them', async () => {
  const told = async (person: TestPerson) => valueOf(await getShift.call(person.caller, {})).keptAside
  expect(await told(bakery.head)).toBe(0)
  await putAside(2)
  expect(await Promise.all([bakery.owner, bakery.head, bakery.early].map(told))).toEqual([2, 2, 0])
})
