import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { readAuditEntry } from '@/lib/documents/audit-entry/read-audit-entry'
import { undoMs } from '@/lib/kitchen/batches/rules'
import { takeEntries } from '@/lib/kitchen/intake/take-entries'
import { addDay } from '@/lib/kitchen/repairs/add-day'
import { bakeAgain } from '@/lib/kitchen/repairs/bake-again'
import { swapDoughs } from '@/lib/kitchen/repairs/swap-doughs'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { moveBatch } from '@/lib/kitchen/shifts/move-batch'
import { undoMove } from '@/lib/kitchen/shifts/undo-move'
import { getFloor } from '@/lib/kitchen/stations/get-floor'
import { withdrawStation } from '@/lib/kitchen/stations/withdraw-station'
import { makeApprovedTrial, type ApprovedTrial } from '@/tests/support/approved-trial'
import { makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '@/tests/support/bakery'
import { freshDatabase, type FreshDatabase } from '@/tests/support/database'
import { atStation, enrolledStation, givePin, tokenAt, type TestStation } from '@/tests/support/stations'

let database: FreshDatabase
let bakery: TestBakery
let station: TestStation
let other: TestStation
let trial: ApprovedTrial
const tokens = { early: '', late: '', there: '' }

beforeAll(async () => {
  database = await freshDatabase()
})
afterAll(() => database.drop())
beforeEach(async () => {
  bakery = await makeBakery('Mill Row')
  ;[station, other] = [await enrolledStation(bakery), await enrolledStation(bakery, 'Oven')]
  for (const who of ['early', 'late'] as const) {
    await givePin(bakery[who])
    tokens[who] = await tokenAt(station, bakery[who])
  }
  tokens.there = await tokenAt(other, bakery.late)
  // Control, one with salt, one with milk; two mixing days.
  trial = await makeApprovedTrial(bakery, { arms: 3, days: 2 })
})

const hour = 3_600_000
const later = (ms: number) => new Date(testNow.getTime() + ms)
type Tap = { by?: string | null; at?: TestStation; ms?: number; formId?: string }
const tap = ({ by = tokens.early, at = station, ms = 0, formId = uuid() }: Tap = {}) => ({
  ...atStation(at, by, later(ms)),
  formId,
})
const idAt = (place: number) => trial.batches[place]!.batchId
const codeAt = (place: number) => trial.batches[place]!.code
const begin = async (place: number) =>
  valueOf(
    await beginBatch.call(tap(), {
      batchId: idAt(place),
      seenRevision: 1,
      cleanDownDone: true,
      swapWhy: 'in the test',
    }),
  )
const out = (place: number, how: Tap = {}, seenRevision = 2) =>
  moveBatch.call(tap(how), { batchId: idAt(place), seenRevision, to: 'lost', why: 'The dough is lost' })
const again = (place: number, how: Tap = {}) => bakeAgain.call(tap(how), { batchId: idAt(place) })
const swap = (one: number, seenTurn: number, with_: number, how: Tap = {}) =>
  swapDoughs.call(tap(how), { batchId: idAt(one), seenTurn, otherId: idAt(with_), why: 'The oven is not free' })
const floor = async (ms = 0) => valueOf(await getFloor.call(atStation(station, tokens.early, later(ms)), {}))
const doughs = () => db().batch.findMany({ where: { trialId: trial.trialId } })
const repairs = () => db().repair.findMany({ where: { trialId: trial.trialId } })

describe('a dough that is taken out and baked again at a tablet', () => {
  it('is told to every tablet, and so is the one that is made for it, in its turn and by its code', async () => {
    await begin(0)
    expect((await floor()).out).toEqual([])
    valueOf(await out(0))
    const told = { id: idAt(0), code: codeAt(0), state: 'lost', dayNumber: 1, when: 'today' }
    expect((await floor()).out).toMatchObject([{ ...told, again: null, whyNot: null }])
    const { code, batchId } = valueOf(await again(0))
    const seen = await floor()
    expect(seen.out).toMatchObject([{ ...told, again: code, whyNot: 'baked-again-already' }])
    expect(seen.next).toMatchObject([
      {
        code: codeAt(1),
        turn: 2,
        after: [
          { code: codeAt(2), turn: 3 },
          { id: batchId, code, turn: 4 },
        ],
      },
    ])
    for (const secret of [...trial.armIds, 'Milk powder', 'The dough is lost', 'armId'])
      expect(JSON.stringify(seen.out) + JSON.stringify(seen.next)).not.toContain(secret)
  })

  it('is kept under whoever is on the tablet, with the station in the record', async () => {
    await begin(0)
    valueOf(await out(0))
    valueOf(await again(0, { by: tokens.late }))
    const { entryText } = await db().auditEntry.findFirstOrThrow({
      where: { bakeryId: bakery.bakeryId, action: 'repairs.bake-again' },
    })
    expect(readAuditEntry(entryText)).toMatchObject({
      entry: { who: { kind: 'station', station: station.stationId, person: { person: bakery.late.personId } } },
    })
    expect(await repairs()).toMatchObject([{ kind: 'bake_again', personId: bakery.late.personId }])
  })

  it('makes one dough of a tap that comes twice, at once or later, with the same answer', async () => {
    await begin(0)
    valueOf(await out(0))
    const formId = uuid()
    const answers = [...(await Promise.all([again(0, { formId }), again(0, { formId })])), await again(0, { formId })]
    expect(new Set(answers.map((answer) => valueOf(answer).code)).size).toBe(1)
    expect(await doughs()).toHaveLength(7)
  })

  it('makes one dough where two tablets ask at once, and the other is told which', async () => {
    await begin(0)
    valueOf(await out(0))
    const both = await Promise.all([again(0), again(0, { at: other, by: tokens.there })])
    expect(both.filter(({ ok }) => ok)).toHaveLength(1)
    expect(both.filter(({ ok }) => !ok).map(refusalOf)).toEqual(['baked-again-already'])
    expect(await doughs()).toHaveLength(7)
    expect(await repairs()).toHaveLength(1)
  })

  it('is none before the book knows that it is out, and none that was taken back; what was baked again is not taken back', async () => {
    await begin(0)
    expect(refusalOf(await again(0))).toBe('not-out')
    valueOf(await out(0))
    valueOf(await undoMove.call(tap(), { batchId: idAt(0), seenRevision: 3 }))
    expect(refusalOf(await again(0))).toBe('not-out')
    expect((await floor()).out).toEqual([])
    valueOf(await out(0, {}, 4))
    valueOf(await again(0))
    expect(refusalOf(await undoMove.call(tap(), { batchId: idAt(0), seenRevision: 5 }))).toBe('undo-built-on')
    expect(await doughs()).toHaveLength(7)
  })

  it('or is taken back, where both are asked at once: never both', async () => {
    await begin(0)
    valueOf(await out(0))
    const [back, made] = await Promise.all([
      undoMove.call(tap(), { batchId: idAt(0), seenRevision: 3 }),
      again(0, { at: other, by: tokens.there }),
    ])
    expect([back.ok, made.ok].filter(Boolean)).toHaveLength(1)
    expect(await doughs()).toHaveLength(made.ok ? 7 : 6)
    expect(await db().batch.findFirstOrThrow({ where: { id: idAt(0) } })).toMatchObject({
      state: made.ok ? 'lost' : 'weighing',
    })
  })

  it('is taken back by whoever took it out, for ten seconds', async () => {
    await begin(0)
    valueOf(await out(0))
    const back = (how: Tap) => undoMove.call(tap(how), { batchId: idAt(0), seenRevision: 3 })
    expect(refusalOf(await back({ by: tokens.late }))).toBe('undo-not-yours')
    expect(refusalOf(await back({ ms: undoMs + 1 }))).toBe('undo-too-late')
    valueOf(await back({ ms: undoMs }))
  })

  it('stays once what decides was read of it, whatever is noted then and however early that says it was', async () => {
    await begin(0)
    const send = (minute: number, entry: object) =>
      takeEntries.call(tap({ ms: minute * 60_000 }), { entries: [{ id: uuid(), batchId: idAt(0), ...entry }] })
    const value = { piece: 1, repeat: 1, value: '1900', unit: 'mL', confirmed: true, takenAt: testNow.toISOString() }
    const read = valueOf(await send(1, { kind: 'reading', measureId: trial.measures['loaf-volume'], ...value })).entries
    expect(read).toMatchObject([{ outcome: 'kept' }])
    const early = new Date(testNow.getTime() - hour).toISOString()
    const noted = valueOf(await send(2, { kind: 'cause', what: 'It was dropped', takenAt: early })).entries
    expect(noted).toMatchObject([{ outcome: 'kept' }])
    const { revision } = (await floor(180_000)).doughs[0]!
    expect(refusalOf(await out(0, { ms: 180_000 }, revision))).toBe('read-before-any-cause')
    expect((await floor(180_000)).out).toEqual([])
    expect(refusalOf(await again(0, { ms: 180_000 }))).toBe('not-out')
  })

  it('is told with why it cannot be baked again: its day is over, or another was added', async () => {
    await begin(0)
    valueOf(await out(0))
    valueOf(await addDay.call(bakery.head.caller, { trialId: trial.trialId, number: 1 }))
    expect((await floor()).out).toMatchObject([{ whyNot: 'day-added-for', addedAs: 3 }])
    expect(refusalOf(await again(0))).toBe('day-added-for')
  })

  it('is told no more once its day is over, and cannot be baked again then', async () => {
    await begin(0)
    valueOf(await out(0))
    const tomorrow = 30 * hour
    tokens.early = await tokenAt(station, bakery.early, undefined, later(tomorrow))
    expect((await floor(tomorrow)).out).toEqual([])
    expect(refusalOf(await again(0, { ms: tomorrow }))).toBe('mixing-day-over')
    expect(await doughs()).toHaveLength(6)
  })

  it('is told of a trial of which nothing else is left, and never to the neighbour', async () => {
    for (const place of [0, 1, 2, 3, 4, 5])
      valueOf(
        await moveBatch.call(tap(), { batchId: idAt(place), seenRevision: 1, to: 'not_baked', why: 'The lot ran out' }),
      )
    expect((await floor()).next).toEqual([])
    expect((await floor()).out.map(({ code }) => code).sort()).toEqual(trial.batches.map(({ code }) => code).sort())
    const neighbour = await makeBakery('Next Door')
    const there = await enrolledStation(neighbour)
    await givePin(neighbour.early)
    const by = await tokenAt(there, neighbour.early)
    expect(valueOf(await getFloor.call(atStation(there, by), {})).out).toEqual([])
    expect(refusalOf(await again(0, { at: there, by }))).toBe('not-found')
    expect(refusalOf(await swap(0, 1, 1, { at: there, by }))).toBe('not-found')
  })
})

describe('two doughs that exchange their places at a tablet', () => {
  it('do so once for a tap that comes twice, and go back by no late second one', async () => {
    const formId = uuid()
    for (const each of await Promise.all([swap(0, 1, 2, { formId }), swap(0, 1, 2, { formId })])) valueOf(each)
    valueOf(await swap(0, 1, 2, { formId }))
    expect(refusalOf(await swap(0, 1, 2))).toMatch(/^stale/)
    expect(await repairs()).toHaveLength(1)
    expect((await floor()).next).toMatchObject([
      {
        id: idAt(2),
        turn: 1,
        after: [
          { id: idAt(1), turn: 2 },
          { id: idAt(0), turn: 3 },
        ],
      },
    ])
  })

  it('both wait, on one mixing day', async () => {
    expect(refusalOf(await swap(0, 1, 3))).toBe('not-of-one-day')
    await begin(0)
    expect(refusalOf(await swap(1, 2, 0))).toBe('exchange-of-waiting')
    expect(await repairs()).toEqual([])
    // What waits on another day is not offered.
    expect((await floor()).next[0]?.after.map(({ id }) => id)).toEqual([idAt(2)])
  })
})

describe('nobody', () => {
  it.each([
    ['takes a dough out', () => out(0, { by: null })],
    ['bakes one again', () => again(1, { by: null })],
    ['exchanges two', () => swap(2, 3, 1, { by: null })],
  ])('%s at a tablet that no person is on', async (_, ask) => {
    await begin(0)
    const before = await doughs()
    expect(refusalOf(await ask())).toBe('not-allowed')
    expect(await doughs()).toEqual(before)
    expect(await repairs()).toEqual([])
  })

  it('does any of it at one that was withdrawn, with another’s token, or once switched off', async () => {
    await begin(0)
    valueOf(await out(0))
    const asked = (how: Tap) => Promise.all([again(0, how), swap(1, 2, 2, how), out(1, how, 1)])
    for (const answer of await asked({ at: other, by: tokens.early })) expect(refusalOf(answer)).toBe('not-allowed')
    await db().person.update({
      where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: bakery.late.personId } },
      data: { endedAt: testNow },
    })
    for (const answer of await asked({ by: tokens.late })) expect(refusalOf(answer)).toBe('not-allowed')
    valueOf(await withdrawStation.call(bakery.owner.caller, { stationId: station.stationId }))
    for (const answer of await asked({})) expect(refusalOf(answer)).toBe('not-signed-in')
    expect(await repairs()).toEqual([])
    expect(await doughs()).toHaveLength(6)
  })

  it('adds a mixing day at a tablet, whoever is on it', async () => {
    await givePin(bakery.head)
    const by = await tokenAt(station, bakery.head)
    await begin(0)
    valueOf(await out(0))
    expect(refusalOf(await addDay.call(tap({ by }), { trialId: trial.trialId, number: 1 }))).toBe('not-allowed')
  })
})
