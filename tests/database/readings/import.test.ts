import { createHash } from 'node:crypto'
import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { verifyRecord } from '@/lib/kitchen/audit/verify-record'
import { correctReading } from '@/lib/kitchen/readings/correct-reading'
import { importReadings } from '@/lib/kitchen/readings/import/import-readings'
import { logReading } from '@/lib/kitchen/readings/log-reading'
import { previewImport } from '@/lib/kitchen/readings/import/preview-import'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { makeApprovedTrial, type ApprovedTrial } from '../../support/approved-trial'
import { makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import { openTheKey } from '../../support/open-the-key'

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
  trial = await makeApprovedTrial(bakery, { days: 2, pieces: 2 })
})

/** Loaf weight and two loaf volumes of both pieces of doughs, by their code. */
const linesOf = (...codes: string[]) =>
  codes.flatMap((code, i) =>
    [1, 2].map((piece) => `${code},${piece},${400 + i},${1600 + 10 * i + piece},${1602 + 10 * i + piece}`),
  )
const wholeFile = () => linesOf(...trial.batches.map(({ code }) => code))
const input = (lines: readonly string[], change: object = {}) => ({
  trialId: trial.trialId,
  file: { name: 'loaves.csv', bytes: Buffer.from(['code,piece,mass,vol 1,vol 2', ...lines].join('\r\n')) },
  day: '2026-03-02',
  keepOdd: false,
  outside: { cleanDownDone: true },
  match: {
    separator: ',',
    decimal: '.',
    arms: [],
    columns: [
      { as: 'code' },
      { as: 'piece' },
      ...(['loaf-mass', 'loaf-volume', 'loaf-volume'] as const).map((code) => ({
        as: 'measure',
        measureId: trial.measures[code],
        unit: code === 'loaf-mass' ? 'g' : 'mL',
      })),
    ],
  },
  ...change,
})
const send = (lines: readonly string[], change?: object, by = bakery.head.caller) =>
  importReadings.call(by, input(lines, change))
const rows = () =>
  db().reading.findMany({ where: { bakeryId: bakery.bakeryId, trialId: trial.trialId }, orderBy: { id: 'asc' } })
const states = async () =>
  (
    await db().batch.findMany({
      where: { bakeryId: bakery.bakeryId, trialId: trial.trialId },
      orderBy: { code: 'asc' },
      select: { state: true },
    })
  ).map(({ state }) => state)
const entries = () =>
  db().auditEntry.findMany({
    where: { bakeryId: bakery.bakeryId, action: 'readings.import-readings', targetId: trial.trialId },
    orderBy: { number: 'asc' },
  })

describe('importing a file', () => {
  it('stores every reading as entered, marks the doughs measured, and writes one entry with the hash of the file', async () => {
    const q = input(wholeFile())
    expect(valueOf(await importReadings.call(bakery.head.caller, q))).toEqual({ stored: 24, already: 0, measured: 4 })
    const kept = await rows()
    expect(kept).toHaveLength(24)
    const first = kept.find(
      ({ batchId, piece, measureId }) =>
        batchId === trial.batches[0]!.batchId && piece === 1 && measureId === trial.measures['loaf-mass'],
    )
    expect(first).toMatchObject({
      value: 400,
      valueEntered: '400',
      unitEntered: 'g',
      repeat: 1,
      personId: bakery.head.personId,
      takenAt: testNow,
      contentHash: expect.stringMatching(/^[0-9a-f]{64}$/),
    })
    expect(await states()).toEqual(['measured', 'measured', 'measured', 'measured'])
    const batch = await db().batch.findFirstOrThrow({
      where: { bakeryId: bakery.bakeryId, id: trial.batches[0]!.batchId },
    })
    expect(batch).toMatchObject({
      piecesMade: 2,
      piecesGood: 2,
      begunAt: first!.takenAt,
      doneAt: first!.takenAt,
      revision: 2,
    })
    expect(
      await db().trial.findFirstOrThrow({ where: { bakeryId: bakery.bakeryId, id: trial.trialId } }),
    ).toMatchObject({ state: 'baking' })
    const [entry, ...more] = await entries()
    expect(more).toEqual([])
    expect(entry!.entryText).toContain(createHash('sha256').update(q.file.bytes).digest('hex'))
    expect(entry!.entryText).toContain('loaves.csv')
    expect(valueOf(await verifyRecord.call(bakery.owner.caller, {}))).toMatchObject({ fault: null })
  })

  it('answers a file that comes again with ‘there already’, also on another day and after a correction', async () => {
    valueOf(await send(wholeFile()))
    const before = await rows()
    expect(valueOf(await send(wholeFile(), { day: '2026-03-01' }))).toEqual({ stored: 0, already: 24, measured: 0 })
    const wrong = before.find(({ measureId }) => measureId === trial.measures['loaf-mass'])!
    valueOf(
      await correctReading.call(bakery.head.caller, {
        id: uuid(),
        supersedesId: wrong.id,
        piece: wrong.piece,
        repeat: 1,
        value: '405',
        unit: 'g',
        reason: 'misread',
      }),
    )
    expect(valueOf(await send(wholeFile()))).toEqual({ stored: 0, already: 24, measured: 0 })
    expect(await rows()).toHaveLength(25)
  })

  it('stores once what two people send at the same moment', async () => {
    const answers = await Promise.all([send(wholeFile()), send(wholeFile(), {}, bakery.owner.caller)])
    expect(answers.map((answer) => valueOf(answer).stored).sort((a, b) => a - b)).toEqual([0, 24])
    expect(await rows()).toHaveLength(24)
  })

  it('stores what is new of a longer file, and finishes a dough that was half read', async () => {
    expect(valueOf(await send(wholeFile().slice(0, 7)))).toEqual({ stored: 21, already: 0, measured: 3 })
    expect(await states()).toEqual(['measured', 'measured', 'measured', 'baked'])
    expect(valueOf(await send(wholeFile()))).toEqual({ stored: 3, already: 21, measured: 1 })
  })

  it('stores nothing when one line is at fault, and says which', async () => {
    const lines = wholeFile()
    lines[7] = lines[7]!.replace(/,\d+$/, ',16OO')
    expect(refusalOf(await send(lines))).toBe('rows-at-fault lines.9.4:not-a-number')
    expect(await rows()).toEqual([])
    expect(await states()).toEqual(['waiting', 'waiting', 'waiting', 'waiting'])
    expect(await entries()).toEqual([])
  })

  it('does not overwrite what the shift has logged', async () => {
    const { batchId } = trial.batches[0]!
    valueOf(await beginBatch.call(bakery.early.caller, { batchId, seenRevision: 1, cleanDownDone: false }))
    valueOf(
      await logReading.call(bakery.early.caller, {
        id: uuid(),
        batchId,
        measureId: trial.measures['loaf-mass'],
        piece: 1,
        repeat: 1,
        value: '399',
        unit: 'g',
        takenAt: testNow.toISOString(),
      }),
    )
    expect(refusalOf(await send(wholeFile()))).toBe('rows-at-fault lines.2.2:row-there')
    expect(await rows()).toHaveLength(1)
  })

  it('leaves the doughs alone when they were begun in the shift, and asks for that', async () => {
    const { batchId, code } = trial.batches[0]!
    expect(refusalOf(await send(linesOf(code), { outside: null }))).toBe('rows-at-fault lines.2.:row-not-begun')
    valueOf(await beginBatch.call(bakery.early.caller, { batchId, seenRevision: 1, cleanDownDone: false }))
    expect(valueOf(await send(linesOf(code), { outside: null }))).toEqual({ stored: 6, already: 0, measured: 0 })
    expect(await states()).toEqual(['weighing', 'waiting', 'waiting', 'waiting'])
  })

  it('asks for a clean-down and for the reason of another order, and keeps the reason', async () => {
    expect(refusalOf(await send(wholeFile(), { outside: { cleanDownDone: false } }))).toBe(
      'invalid cleanDownDone:clean-down-untold',
    )
    const second = linesOf(trial.batches[1]!.code)
    expect(refusalOf(await send(second))).toBe('invalid orderWhy:missing')
    valueOf(await send(second, { outside: { cleanDownDone: false, orderWhy: 'the tins were hot' } }))
    expect((await entries())[0]!.entryText).toContain('the tins were hot')
  })

  it('is not for trials that are over or not approved, but for what is there already', async () => {
    valueOf(await send(wholeFile().slice(0, 6)))
    await db().trial.update({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: trial.trialId } },
      data: { state: 'closed' },
    })
    expect(refusalOf(await send(wholeFile()))).toBe('trial-closed')
    expect(valueOf(await send(wholeFile().slice(0, 6)))).toMatchObject({ stored: 0, already: 18 })
    trial = await makeApprovedTrial(bakery, { days: 2, pieces: 2, isUndecided: true })
    expect(refusalOf(await send(wholeFile()))).toBe('trial-not-approved')
    expect(await rows()).toEqual([])
  })

  it('is for the owner and the head baker of this bakery', async () => {
    expect(refusalOf(await send(wholeFile(), {}, bakery.early.caller))).toBe('not-allowed')
    expect(refusalOf(await send(wholeFile(), {}, neighbour.owner.caller))).toBe('not-found')
    expect(refusalOf(await previewImport.call(bakery.early.caller, { trialId: trial.trialId, look: null }))).toBe(
      'not-allowed',
    )
    expect(refusalOf(await previewImport.call(neighbour.owner.caller, { trialId: trial.trialId, look: null }))).toBe(
      'not-found',
    )
    expect(await rows()).toEqual([])
  })

  it('takes five thousand rows at once', async () => {
    trial = await makeApprovedTrial(bakery, { arms: 2, days: 25, pieces: 100 })
    const lines = trial.batches.flatMap(({ code }) =>
      Array.from({ length: 100 }, (_, i) => `${code},${i + 1},400,1600,1601`),
    )
    expect(valueOf(await send(lines))).toEqual({ stored: 15_000, already: 0, measured: 50 })
  })
})

describe('values outside what is usual', () => {
  const odd = () => wholeFile().map((line, i) => (i === 0 ? line.replace(',400,', ',4000,') : line))

  it('are stored when somebody said that they were looked at, with the range that they are outside of', async () => {
    expect(refusalOf(await send(odd()))).toBe('rows-at-fault lines.2.2:row-odd')
    expect(await rows()).toEqual([])
    expect(valueOf(await send(odd(), { keepOdd: true }))).toMatchObject({ stored: 24 })
    const kept = await rows()
    expect(
      kept.filter(({ value, plausibleLeast, plausibleMost }) => value < plausibleLeast! || value > plausibleMost!),
    ).toMatchObject([{ value: 4000, plausibleLeast: 240, plausibleMost: 720 }])
    expect((await entries())[0]!.entryText).toContain('line 2: 4000 g')
  })

  it('leave their dough baked, so that a person says why it is measured', async () => {
    expect(valueOf(await send(odd(), { keepOdd: true }))).toMatchObject({ measured: 3 })
    expect(await states()).toEqual(['baked', 'measured', 'measured', 'measured'])
  })
})

describe('a preview', () => {
  it('guesses the columns, counts what would be stored, and keeps nothing', async () => {
    const { trialId: _, match: __, ...look } = input(wholeFile())
    const { seen } = valueOf(
      await previewImport.call(bakery.head.caller, {
        trialId: trial.trialId,
        look: { ...look, match: null, matched: '' },
      }),
    )
    expect(seen!.match!.columns.map(({ as }) => as)).toEqual(['code', 'piece', 'nothing', 'nothing', 'nothing'])
    const { match } = input(wholeFile())
    const again = (change: object) =>
      previewImport.call(bakery.head.caller, {
        trialId: trial.trialId,
        look: { ...look, match, matched: seen!.matched, ...change },
      })
    const { seen: matched } = valueOf(await again({}))
    expect(matched!.rows).toMatchObject({
      stored: 24,
      already: 0,
      faultCount: 0,
      byMeasure: [
        { measure: { code: 'loaf-mass', name: 'Loaf weight' }, count: 8 },
        { measure: { code: 'loaf-volume', name: 'Loaf volume' }, count: 16 },
      ],
    })
    expect(matched!.rows!.doughs.map(({ dough, readings, becomes }) => [dough, readings, becomes])).toEqual(
      trial.batches.map(({ code }) => [{ code }, 6, 'measured']),
    )
    // A mended file with the same columns keeps its match; of other columns, or by another separator, they are guessed.
    const columnsOf = async (text: string, change: object = {}) =>
      valueOf(await again({ file: { name: 'x', bytes: Buffer.from(text) }, ...change })).seen!.match!.columns.length
    expect(await columnsOf('code,piece,mass,vol 1,vol 2\n101,1,400,,')).toBe(5)
    expect(await columnsOf('code;piece\n101;1')).toBe(2)
    expect(await columnsOf('code,piece,mass;vol 1,vol 2\n101,1,400;,', { match: { ...match, separator: ';' } })).toBe(2)
    expect(await rows()).toEqual([])
  })

  it('calls a dough what the file calls it, so that no code is given away', async () => {
    const { trialId: _, match, ...look } = input([])
    const bytes = Buffer.from('day,arm,loaf weight\n1,control,400\n2,A,410')
    const byArm = { ...look, file: { name: 'x', bytes }, match: null, matched: '' }
    const before = valueOf(await previewImport.call(bakery.head.caller, { trialId: trial.trialId, look: byArm }))
    expect(before.seen).toMatchObject({ problems: [{ path: 'columns.1', code: 'column-tells-key' }], rows: null })
    await openTheKey(bakery.head.caller, trial.trialId)
    const { seen } = valueOf(
      await previewImport.call(bakery.head.caller, {
        trialId: trial.trialId,
        look: { ...look, file: { name: 'x', bytes }, match: null, matched: '' },
      }),
    )
    expect(seen!.rows!.doughs.map(({ dough }) => dough)).toEqual([
      { dayNumber: 1, arm: 0, number: 1 },
      { dayNumber: 2, arm: 1, number: 1 },
    ])
    expect(JSON.stringify({ ...seen, rows: { ...seen!.rows, cleanDown: [], skipped: null } })).not.toMatch(
      new RegExp(`"(${trial.batches.map(({ code }) => code).join('|')})"`),
    )
    expect(match).toBeDefined()
  })
})
