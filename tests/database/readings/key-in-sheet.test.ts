import fc from 'fast-check'
import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { correctReading } from '@/lib/kitchen/readings/correct-reading'
import { logReading } from '@/lib/kitchen/readings/log-reading'
import { getSheet } from '@/lib/kitchen/readings/paper/get-sheet'
import { keyInSheet } from '@/lib/kitchen/readings/paper/key-in-sheet'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { getReadingLog } from '@/lib/kitchen/readings/get-reading-log'
import { moveBatch } from '@/lib/kitchen/shifts/move-batch'
import { makeApprovedTrial, type ApprovedTrial } from '../../support/approved-trial'
import type { Result } from '@/lib/kitchen/result'
import { callerOf, makeBakery, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery
let trial: ApprovedTrial
let batchId: string

/** Code and problems of a no. */
function saidOf(result: Result<unknown>) {
  if (result.ok) throw new Error(`not refused: ${JSON.stringify(result.value)}`)
  return result.refusal
}
const refusalOf = (result: Result<unknown>) => saidOf(result).code
const problemsOf = (result: Result<unknown>) => saidOf(result).problems

const minutes = (count: number) => new Date(testNow.getTime() + count * 60_000)
const written = minutes(-90)

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

type Line = { value: string | null } & Record<string, unknown>
const temp = (value: string | null, more: object = {}): Line => ({
  measureId: trial.measures['dough-temp'],
  piece: null,
  factorLevel: null,
  repeat: 1,
  unit: '°C',
  value,
  ...more,
})
const loaf = (piece: number, value: string | null, more: object = {}): Line => ({
  measureId: trial.measures['loaf-mass'],
  piece,
  factorLevel: null,
  repeat: 1,
  unit: 'g',
  value,
  ...more,
})
const keyIn = (lines: Line[], more: object = {}, caller = bakery.early.caller) =>
  keyInSheet.call(caller, {
    batchId,
    writtenById: bakery.late.personId,
    writtenAt: written.toISOString(),
    lines,
    confirmed: false,
    ...more,
  })
const readings = () =>
  db().reading.findMany({
    where: { bakeryId: bakery.bakeryId, batchId },
    orderBy: [{ measureId: 'asc' }, { piece: 'asc' }, { repeat: 'asc' }],
  })
const sheets = () => db().paperSheet.findMany({ where: { bakeryId: bakery.bakeryId, batchId } })

describe('a sheet of paper', () => {
  it('puts every value that is written into the book, under the time of the paper, and says who wrote it', async () => {
    expect(valueOf(await keyIn([temp('26.4'), loaf(1, '412.5'), loaf(2, null), loaf(3, '418')]))).toEqual({ kept: 3 })
    const kept = await readings()
    expect(kept.map(({ piece, valueEntered }) => [piece, valueEntered])).toEqual(
      expect.arrayContaining([
        [null, '26.4'],
        [1, '412.5'],
        [3, '418'],
      ]),
    )
    for (const each of kept) {
      expect(each.takenAt).toEqual(written)
      expect(each.receivedAt).toEqual(testNow)
      expect(each.personId).toBe(bakery.early.personId)
      expect(each.supersedesId).toBeNull()
    }
    expect(await sheets()).toMatchObject([
      { writtenById: bakery.late.personId, writtenAt: written, keyedById: bakery.early.personId, keyedAt: testNow },
    ])
    const { readings: shown } = valueOf(await getReadingLog.call(bakery.early.caller, { batchId }))
    expect(shown.map(({ paperBy, oddTime }) => [paperBy, oddTime])).toEqual(
      Array.from({ length: 3 }, () => [bakery.late.name, null]),
    )
    const entry = await db().auditEntry.findFirstOrThrow({
      where: { bakeryId: bakery.bakeryId, action: 'readings.key-in-sheet', targetId: batchId },
    })
    expect(entry.entryText).toContain('"value":"412.5"')
    expect(entry.entryText).toContain(bakery.late.name)
  })

  it('is neither late nor odd though the dough was begun here after it was written, as on a day without a tablet', async () => {
    valueOf(await keyIn([temp('26.4')]))
    valueOf(
      await logReading.call(bakery.early.caller, {
        id: uuid(),
        ...loaf(1, '412'),
        batchId,
        takenAt: written.toISOString(),
      }),
    )
    const { readings: shown } = valueOf(await getReadingLog.call(bakery.early.caller, { batchId }))
    expect(Object.fromEntries(shown.map(({ piece, oddTime }) => [piece ?? 'dough', oddTime]))).toEqual({
      dough: null,
      1: 'before-begun',
    })
  })

  it('goes in whole or not at all, and says what is wrong at each field', async () => {
    const answer = await keyIn([temp('26.4'), loaf(1, 'forty'), loaf(2, '9000'), loaf(99, '410'), loaf(3, '412')])
    expect(refusalOf(answer)).toBe('invalid')
    expect(problemsOf(answer).map(({ path }) => path)).toEqual(
      expect.arrayContaining(['lines.1.value', 'lines.2.value']),
    )
    expect(await readings()).toEqual([])
    expect(await sheets()).toEqual([])
  })

  it('asks to look again at a value outside what is usual, and takes it when somebody did', async () => {
    const answer = await keyIn([loaf(1, '41.2')])
    expect(refusalOf(answer)).toBe('odd-reading')
    expect(problemsOf(answer)).toMatchObject([{ path: 'lines.0.value', code: 'outside-usual' }])
    expect(valueOf(await keyIn([loaf(1, '41.2')], { confirmed: true }))).toEqual({ kept: 1 })
  })

  it('never takes a place that has a reading: that one is corrected, with a reason', async () => {
    valueOf(await keyIn([loaf(1, '412')]))
    const answer = await keyIn([loaf(1, '430'), loaf(2, '415')])
    expect(refusalOf(answer)).toBe('reading-there')
    expect(problemsOf(answer)).toMatchObject([{ path: 'lines.0.value', code: 'reading-there' }])
    expect(await readings()).toHaveLength(1)
  })

  it('names one place once', async () => {
    const answer = await keyIn([loaf(1, '412'), loaf(1, '413')])
    expect(problemsOf(answer)).toMatchObject([{ path: 'lines.1.value', code: 'reading-there' }])
    expect(await readings()).toEqual([])
  })

  it('that is empty puts nothing in', async () => {
    expect(refusalOf(await keyIn([loaf(1, null), temp(null)]))).toBe('nothing-on-sheet')
    expect(await sheets()).toEqual([])
  })

  it.each([
    ['a time to come', () => ({ writtenAt: minutes(10).toISOString() }), 'writtenAt', 'written-ahead'],
    [
      'a time before the trial',
      () => ({ writtenAt: minutes(-60 * 24 * 40).toISOString() }),
      'writtenAt',
      'row-before-the-trial',
    ],
    ['no time', () => ({ writtenAt: '2026-03-02 quarter past' }), 'writtenAt', 'not-a-moment'],
    ['nobody', () => ({ writtenById: '' }), 'writtenById', undefined],
    ['somebody of another bakery', () => ({ writtenById: neighbour.early.personId }), 'writtenById', 'wrong-choice'],
  ])('with %s is refused there', async (_what, more, path, code) => {
    const [problem] = problemsOf(await keyIn([temp('26.4')], more()))
    expect(problem).toMatchObject({ path, ...(code ? { code } : {}) })
    expect(await readings()).toEqual([])
  })

  it('of a batch that waits, of another bakery, or of a trial that is over is refused', async () => {
    const waiting = trial.batches[1]!.batchId
    expect(refusalOf(await keyIn([temp('26.4')], { batchId: waiting }))).toBe('batch-not-begun')
    expect(
      refusalOf(await keyIn([temp('26.4')], { writtenById: neighbour.early.personId }, neighbour.early.caller)),
    ).toBe('not-found')
    expect(refusalOf(await keyIn([temp('26.4')], {}, { ...bakery.early.caller, sessionSecret: null }))).toBe(
      'not-signed-in',
    )
  })

  it('that comes twice from one form is in the book once', async () => {
    const caller = { ...callerOf(bakery.early.sessionSecret, testNow), formId: uuid() }
    expect(valueOf(await keyIn([loaf(1, '412')], {}, caller))).toEqual({ kept: 1 })
    expect(valueOf(await keyIn([loaf(1, '412')], {}, caller))).toEqual({ kept: 1 })
    expect(await readings()).toHaveLength(1)
    expect(await sheets()).toHaveLength(1)
  })

  it('of two people at once goes in once', async () => {
    const both = await Promise.all([keyIn([loaf(1, '412')]), keyIn([loaf(1, '412')], {}, bakery.late.caller)])
    expect(both.filter(({ ok }) => ok)).toHaveLength(1)
    expect(await readings()).toHaveLength(1)
  })

  it('is corrected as any reading is, and stays', async () => {
    valueOf(await keyIn([loaf(1, '412')]))
    const [wrong] = await readings()
    valueOf(
      await correctReading.call(bakery.early.caller, {
        id: uuid(),
        supersedesId: wrong!.id,
        piece: 1,
        repeat: 1,
        value: '421',
        unit: 'g',
        reason: 'a one for a two',
      }),
    )
    const { readings: shown } = valueOf(await getReadingLog.call(bakery.early.caller, { batchId }))
    expect(shown.map(({ paperBy, holds }) => [paperBy, holds])).toEqual([
      [bakery.late.name, false],
      [null, true],
    ])
    await connected(database.ownerUrl, async (raw) => {
      for (const table of ['paper_sheet', 'sheet_reading'])
        for (const statement of [`DELETE FROM ${table}`, `TRUNCATE ${table} CASCADE`])
          await expect(raw.query(statement)).rejects.toThrow()
    })
  })
})

it('whatever is left empty, what goes in is just what was written', async () => {
  const places = [temp(null), loaf(1, null), loaf(2, null), loaf(3, null)]
  await fc.assert(
    fc.asyncProperty(fc.array(fc.boolean(), { minLength: 4, maxLength: 4 }), async (filled) => {
      trial = await makeApprovedTrial(bakery)
      batchId = trial.batches[0]!.batchId
      valueOf(await beginBatch.call(bakery.early.caller, { batchId, seenRevision: 1, cleanDownDone: false }))
      const own = places.map((place, at) => ({
        ...place,
        measureId: at === 0 ? trial.measures['dough-temp'] : trial.measures['loaf-mass'],
        value: filled[at] ? (at === 0 ? '26' : String(400 + at)) : null,
      }))
      const answer = await keyIn(own)
      expect(answer.ok).toBe(filled.some(Boolean))
      expect((await readings()).map(({ valueEntered }) => valueEntered).sort()).toEqual(
        own.flatMap(({ value }) => value ?? []).sort(),
      )
    }),
    { numRuns: 6, seed: 11 },
  )
})

describe('the sheet', () => {
  const sheet = async (of = batchId) => valueOf(await getSheet.call(bakery.early.caller, { batchId: of }))

  it('has every place once, with what is there, and one further where two disagree', async () => {
    const twice = trial.measures['loaf-volume']
    valueOf(await keyIn([temp('26.4')]))
    const of = async (code: string) => (await sheet()).measures.find((each) => each.code === code)!
    expect((await of('dough-temp')).places).toEqual([
      { piece: null, factorLevel: null, repeat: 1, reading: { value: '26.4', unit: '°C' } },
    ])
    const before = (await of('loaf-volume')).places.filter(({ piece }) => piece === 1).length
    const volume = (repeat: number, value: string) => loaf(1, value, { measureId: twice, unit: 'mL', repeat })
    valueOf(await keyIn([volume(1, '1400'), volume(2, '1900')], { confirmed: true }))
    expect((await of('loaf-volume')).places.filter(({ piece }) => piece === 1)).toHaveLength(before + 1)
  })

  it('prints before a batch is begun, and takes nothing then', async () => {
    const waiting = await sheet(trial.batches[1]!.batchId)
    expect(waiting.isOpen).toBe(false)
    expect(waiting.measures.flatMap(({ places }) => places).length).toBeGreaterThan(3)
    valueOf(
      await moveBatch.call(bakery.head.caller, {
        batchId: trial.batches[1]!.batchId,
        seenRevision: 1,
        to: 'not_baked',
        why: 'no flour',
      }),
    )
    expect((await sheet(trial.batches[1]!.batchId)).isOpen).toBe(false)
  })

  it('is of this bakery alone', async () => {
    expect(refusalOf(await getSheet.call(neighbour.owner.caller, { batchId }))).toBe('not-found')
  })
})
