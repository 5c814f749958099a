import fc from 'fast-check'
import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { hashOfText } from '@/lib/documents/hash-of-text'
import { readPlan } from '@/lib/documents/plan/read-plan'
import type { Caller } from '@/lib/kitchen/caller'
import { listWaiting } from '@/lib/kitchen/desk/list-waiting'
import { takeEntries } from '@/lib/kitchen/intake/take-entries'
import { getPhoto } from '@/lib/kitchen/photos/get-photo'
import { listPhotos } from '@/lib/kitchen/photos/list-photos'
import { photoLimits } from '@/lib/kitchen/photos/must-have-room'
import { sendPhoto } from '@/lib/kitchen/photos/send-photo'
import { closeTrial } from '@/lib/kitchen/results/close-trial'
import { getBatch } from '@/lib/kitchen/shifts/get-batch'
import { openDoughKey } from '@/lib/kitchen/shifts/open-dough-key'
import { getWeighList } from '@/lib/kitchen/stations/get-weigh-list'
import { confirmLot } from '@/lib/kitchen/stores/confirm-lot'
import { endLot } from '@/lib/kitchen/stores/end-lot'
import { listLots } from '@/lib/kitchen/stores/list-lots'
import { matchLot } from '@/lib/kitchen/stores/match-lot'
import { receiveLot } from '@/lib/kitchen/stores/receive-lot'
import { isSameInAll, linesOfPlan, type TrialLine } from '@/lib/kitchen/weighings/lines-of-plan'
import { listLotsToConfirm } from '@/lib/kitchen/weighings/list-lots-to-confirm'
import { logWeighingInput } from '@/lib/kitchen/weighings/log-weighing.input'
import { weighingContentText } from '@/lib/kitchen/weighings/weighing-content.input'
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
import { makeEndedTrial, type EndedTrial } from '../../support/ended-trial'
import { fromCamera } from '../../support/made-pictures'
import { saidOf, sendWhole, sha256 } from '../../support/send-photo'
import { atStation, enrolledStation, givePin, testPin, tokenAt } from '../../support/stations'

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery
let trial: EndedTrial
let lines: TrialLine[]
let doughs: { id: string; code: string; arm: number }[]

const before = new Date(testNow.getTime() - 10 * 60_000)

beforeAll(async () => {
  database = await freshDatabase()
  neighbour = await makeBakery('Next Door', before)
})
afterAll(() => database.drop())
beforeEach(async () => {
  bakery = await makeBakery('Mill Row', before)
  trial = await makeEndedTrial(bakery, { state: 'baking' })
  const { planText, planHash } = await db().trial.findUniqueOrThrow({
    where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: trial.trialId } },
  })
  const read = readPlan(planText!, planHash!)
  if (read.outcome !== 'read') throw new Error(read.outcome)
  lines = linesOfPlan(read.plan)
  const batches = await db().batch.findMany({
    where: { bakeryId: bakery.bakeryId, trialId: trial.trialId },
    select: { id: true, code: true, arm: { select: { position: true } } },
    orderBy: [{ mixingDay: { number: 'asc' } }, { plannedOrder: 'asc' }],
  })
  doughs = batches.map(({ arm, ...batch }) => ({ ...batch, arm: arm.position }))
})

const as = ({ sessionSecret, password }: TestPerson, now: Date = before) => callerOf(sessionSecret, now, password)
/** Of what only some doughs have a dose. */
const dose = () => lines.find(({ isDose, targets }) => isDose && targets[1]!.massG > 0 && targets[0]!.massG === 0)!
const same = () => lines.find(isSameInAll)!
const doughOf = (arm: number) => doughs.find((each) => each.arm === arm)!

/** An entry that says the lots of a line, by their codes or as they are given. */
const entry = (line: TrialLine, dough: { id: string }, lots: (string | object)[], more: object = {}) => ({
  kind: 'weighing',
  id: uuid(),
  batchId: dough.id,
  stageId: line.stage.id,
  ingredientId: line.ingredient.id,
  part: line.part,
  how: 'weighed',
  mass: '12',
  unit: 'g',
  lots: lots.map((lot) => (typeof lot === 'string' ? { code: lot } : lot)),
  takenAt: before.toISOString(),
  confirmed: true,
  ...more,
})
const send = async (entries: object[], caller: Caller = as(bakery.early)) =>
  valueOf(await takeEntries.call(caller, { entries })).entries
/** What became of one entry: `kept`, or why not. */
const came = async (one: object) => {
  const [answer] = await send([one])
  return answer!.outcome === 'refused'
    ? answer!.refusal.problems.map(({ path, code }) => `${path}:${code}`)
    : answer!.outcome
}
const lots = () => db().lot.findMany({ where: { bakeryId: bakery.bakeryId }, orderBy: { enteredAt: 'asc' } })
const taken = () =>
  db().weighingLot.findMany({ where: { bakeryId: bakery.bakeryId }, select: { lotId: true, codeEntered: true } })
const toConfirm = async (line: TrialLine, who = bakery.head, now = before) =>
  valueOf(await listLotsToConfirm.call(as(who, now), { ingredientId: line.ingredient.id }))
const lastRecord = async () =>
  JSON.parse(
    (await db().auditEntry.findFirstOrThrow({ where: { bakeryId: bakery.bakeryId }, orderBy: { number: 'desc' } }))
      .entryText,
  ) as { action: string; after: Record<string, unknown> }
const receive = async (ingredientId: string, code: string) =>
  valueOf(
    await receiveLot.call(as(bakery.head), {
      ingredientId,
      code,
      receivedOn: '2026-03-02',
      bestBefore: null,
      strength: null,
      note: '',
    }),
  ).lotId
/** A lot that was said at the bench, by its code. */
const sayLot = async (line: TrialLine, code: string, dough = doughOf(1)) => {
  expect(await came(entry(line, dough, [code]))).toBe('kept')
  return (await db().lot.findFirstOrThrow({ where: { bakeryId: bakery.bakeryId, code } })).id
}

describe('a lot that nobody has written down', () => {
  it('comes into the stores with the weighing that names it by its code, to be confirmed, from the tablet where it was', async () => {
    const station = await enrolledStation(bakery, 'Bench', before)
    await givePin(bakery.early, testPin, before)
    const tablet = atStation(station, await tokenAt(station, bakery.early, testPin, before), before)
    const one = entry(same(), doughOf(1), [' Ab 12\n'], { how: 'ticked', mass: null, unit: null })
    const { kind: _, ...content } = one
    const hash = hashOfText(weighingContentText(logWeighingInput.parse(content)))
    expect(await send([one], tablet)).toMatchObject([{ outcome: 'kept', hash, isAgain: false }])
    expect(await send([one, one], tablet)).toMatchObject([
      { outcome: 'kept', isAgain: true },
      { outcome: 'kept', isAgain: true },
    ])
    expect(await lots()).toMatchObject([
      {
        code: 'Ab 12',
        ingredientId: same().ingredient.id,
        enteredById: bakery.early.personId,
        enteredAt: before,
        stationId: station.stationId,
        saidWithId: one.id,
        confirmedAt: null,
        bestBefore: null,
        endedAt: null,
      },
    ])
    expect(await taken()).toMatchObject([{ codeEntered: 'Ab 12' }])
    expect(await toConfirm(same())).toMatchObject({
      count: 1,
      mayConfirm: true,
      rows: [{ code: 'Ab 12', said: { who: bakery.early.name, at: before, station: 'Bench' }, photos: [] }],
    })
    expect(valueOf(await listLots.call(as(bakery.head), { ingredientId: same().ingredient.id })).inUse.count).toBe(0)
  })

  it('is the lot that the stores have, whatever the capitals, the blanks at its ends and the form of its letters', async () => {
    const lotId = await receive(same().ingredient.id, 'Süd 4')
    for (const [at, code] of ['süd 4', ' SÜD 4 ', 'Su\u0308d 4'].entries())
      expect(await came(entry(same(), doughs[at]!, [code]))).toBe('kept')
    expect(await lots()).toHaveLength(1)
    expect(new Set((await taken()).map((each) => each.lotId))).toEqual(new Set([lotId]))
  })

  it('is one lot beside others, and named twice in one line it is refused', async () => {
    const known = await receive(same().ingredient.id, 'F-1')
    const of = (...named: object[]) => entry(same(), doughOf(1), named)
    const half = { mass: '6' }
    expect(await came(of({ code: 'F-9', ...half }, { code: 'f-9', ...half }))).toEqual(['lots.1.code:there-twice'])
    expect(await came(of({ lotId: known, ...half }, { code: 'f-1', ...half }))).toEqual(['lots.1.code:there-twice'])
    expect(await lots()).toHaveLength(1)
    expect(await came(of({ lotId: known, ...half }, { code: 'F-9', ...half }))).toBe('kept')
    expect((await lots()).map(({ code }) => code).sort()).toEqual(['F-1', 'F-9'])
  })

  it.each([
    ['neither id nor code', {}, 'lots.0.lotId:lot-by-id-or-code'],
    ['an id and a code', { lotId: uuid(), code: 'F-1' }, 'lots.0.lotId:lot-by-id-or-code'],
    ['a code without end', { code: 'x'.repeat(61) }, 'lots.0.code:too-long'],
    ['a code with control characters', { code: 'F\u001d10' }, 'lots.0.code:unreadable'],
    ['a code that turns the text around it', { code: 'F-\u202e1' }, 'lots.0.code:unreadable'],
    ['a code that nobody can see', { code: '\u200b' }, 'lots.0.code:unreadable'],
    ['an empty code', { code: '  ' }, 'lots.0.code:missing'],
  ])('is refused with %s, and nothing is kept', async (_, lot, fault) => {
    expect(await came(entry(same(), doughOf(1), [lot]))).toEqual([fault])
    expect(await lots()).toEqual([])
    expect(await taken()).toEqual([])
  })

  it('is refused where nothing is said of the allergens, and taken once something is', async () => {
    const where = { bakeryId: bakery.bakeryId, id: same().ingredient.id }
    const was = await db().ingredient.findFirstOrThrow({ where })
    await db().ingredient.updateMany({ where, data: { allergens: [], allergensCheckedAt: null } })
    const one = entry(same(), doughOf(1), ['F-1'])
    expect(await came(one)).toEqual(['lots.0.code:lot-allergens-unknown'])
    expect(await lots()).toEqual([])
    valueOf(await openDoughKey.call(as(bakery.early), { batchId: doughOf(1).id }))
    const station = await enrolledStation(bakery, 'Bench', before)
    await givePin(bakery.early, testPin, before)
    const tablet = atStation(station, await tokenAt(station, bakery.early, testPin, before), before)
    const isUnknown = async () =>
      valueOf(await getWeighList.call(tablet, { batchId: doughOf(1).id })).lines.find(
        ({ ingredient }) => ingredient.id === where.id,
      )!.isAllergensUnknown
    expect(await isUnknown()).toBe(true)
    await db().ingredient.updateMany({
      where,
      data: { allergens: was.allergens, allergensCheckedAt: was.allergensCheckedAt ?? before },
    })
    expect(await isUnknown()).toBe(false)
    expect(await came(one)).toBe('kept')
  })

  it('is told to be another ingredient’s, by its very code or by the article on its label', async () => {
    const other = dose().ingredient.id
    await receive(other, 'M 7')
    await receive(other, '01040123456789051012A')
    expect(await came(entry(same(), doughOf(1), ['m 7']))).toEqual(['lots.0.code:lot-of-other-ingredient'])
    expect(await came(entry(same(), doughOf(1), ['(01)04012345678905(10)99']))).toEqual([
      'lots.0.code:lot-of-other-ingredient',
    ])
    expect(await came(entry(same(), doughOf(1), ['01099999999999991012A']))).toBe('kept')
    // The same article again is another delivery of the same ingredient.
    expect(await came(entry(dose(), doughOf(1), ['01040123456789051013B']))).toBe('kept')
  })

  it.each([
    ['used_up', 'lot-was-ended'],
    ['mistaken', 'lot-was-ended'],
    ['taken_out', 'lot-was-taken-out'],
  ] as const)('under the code of a lot that was ended as %s is told, and not revived', async (why, fault) => {
    const lotId = await receive(same().ingredient.id, 'F-1')
    valueOf(await endLot.call(as(bakery.head), { lotId, why }))
    const one = entry(same(), doughOf(1), ['f-1'])
    expect(await came(one)).toEqual([`lots.0.code:${fault}`])
    expect(await lots()).toMatchObject([{ id: lotId, endedWhy: why }])
    // Received anew it is sent again from the tablet, and goes through.
    const again = await receive(same().ingredient.id, 'F-1')
    expect(await came(one)).toBe('kept')
    expect(await taken()).toMatchObject([{ lotId: again }])
  })

  it('said by several at one moment is one lot', async () => {
    const answers = await Promise.all(
      doughs.slice(0, 4).map((dough, at) => send([entry(same(), dough, [at % 2 === 0 ? 'F-1' : 'f-1'])])),
    )
    expect(answers.flat().map(({ outcome }) => outcome)).toEqual(['kept', 'kept', 'kept', 'kept'])
    expect(await lots()).toHaveLength(1)
    expect(await taken()).toHaveLength(4)
  })

  it('is of this bakery alone', async () => {
    const id = await sayLot(same(), 'F-1')
    const theirs = (caller: Caller) => [
      confirmLot.call(caller, { lotId: id, receivedOn: '2026-03-01', bestBefore: null }),
      matchLot.call(caller, { lotId: id, sameAsId: id }),
    ]
    for (const answer of await Promise.all(theirs(as(neighbour.owner)))) expect(refusalOf(answer)).toBe('not-found')
    const shown = await listLotsToConfirm.call(as(neighbour.owner), { ingredientId: same().ingredient.id })
    expect(valueOf(shown)).toMatchObject({ count: 0, rows: [], others: [] })
  })
})

describe('two tablets that type codes without a network', () => {
  it('make one lot of each, in whatever order and however often their entries come in', async () => {
    const codes = ['F-1', 'f-1', ' F-1', 'G-2', 'g-2']
    await fc.assert(
      fc.asyncProperty(
        fc.array(fc.record({ dough: fc.nat(3), code: fc.constantFrom(...codes) }), { minLength: 2, maxLength: 6 }),
        fc.array(fc.nat(5), { minLength: 1, maxLength: 8 }),
        fc.integer({ min: 1, max: 3 }),
        async (saidAt, order, size) => {
          const fresh = await makeBakery('Mill Row', before)
          const made = await makeEndedTrial(fresh, { state: 'baking' })
          const batches = await db().batch.findMany({
            where: { bakeryId: fresh.bakeryId, trialId: made.trialId },
            select: { id: true },
            orderBy: { id: 'asc' },
          })
          const { planText, planHash } = await db().trial.findFirstOrThrow({ where: { bakeryId: fresh.bakeryId } })
          const read = readPlan(planText!, planHash!)
          if (read.outcome !== 'read') throw new Error(read.outcome)
          const line = linesOfPlan(read.plan).find(isSameInAll)!
          const entries = saidAt.map(({ dough, code }) => entry(line, batches[dough]!, [code]))
          // Everything comes at least once, some of it again, in pieces.
          const queue = [...order.map((at) => entries[at % entries.length]!), ...entries]
          for (let at = 0; at < queue.length; at += size) await send(queue.slice(at, at + size), as(fresh.early))
          const kept = await db().weighingLot.findMany({
            where: { bakeryId: fresh.bakeryId },
            select: { codeEntered: true, lot: { select: { code: true } } },
          })
          const stores = await db().lot.findMany({ where: { bakeryId: fresh.bakeryId } })
          const spelled = (code: string) => code.trim().toLowerCase()
          // One lot for each code that stands with a weighing, and each weighing has its own.
          expect(stores.map(({ code }) => spelled(code)).sort()).toEqual(
            [...new Set(kept.map(({ codeEntered }) => spelled(codeEntered!)))].sort(),
          )
          for (const { codeEntered, lot } of kept) expect(spelled(lot.code)).toBe(spelled(codeEntered!))
          expect(kept).toHaveLength(new Set(entries.map(({ batchId }) => batchId)).size)
        },
      ),
      { seed: 26, numRuns: 6 },
    )
  })
})

describe('a lot to confirm', () => {
  it('is confirmed once, with its days, by whoever writes in the stores; who said it stays', async () => {
    const lotId = await sayLot(same(), 'F-1')
    const days = { lotId, receivedOn: '2026-03-01', bestBefore: '2026-08-31' }
    expect(refusalOf(await confirmLot.call(as(bakery.early), days))).toBe('not-allowed')
    expect(refusalOf(await confirmLot.call(as(bakery.head), { ...days, receivedOn: '2026-03-03' }))).toBe(
      'invalid receivedOn:received-in-future',
    )
    expect(refusalOf(await confirmLot.call(as(bakery.head), { ...days, bestBefore: '2026-02-28' }))).toBe(
      'invalid bestBefore:before-received',
    )
    const tries = await Promise.all([bakery.head, bakery.owner].map((who) => confirmLot.call(as(who), days)))
    expect(tries.map((result) => (result.ok ? 'confirmed' : refusalOf(result))).sort()).toEqual(['confirmed', 'stale'])
    expect(await lots()).toMatchObject([{ enteredById: bakery.early.personId, enteredAt: before }])
    const { inUse } = valueOf(await listLots.call(as(bakery.head), { ingredientId: same().ingredient.id }))
    expect(inUse.rows).toMatchObject([
      { id: lotId, receivedOn: '2026-03-01', bestBefore: '2026-08-31', wasSaid: true, ended: null },
    ])
    expect((await toConfirm(same())).count).toBe(0)
    expect(await lastRecord()).toMatchObject({
      action: 'stores.confirm-lot',
      after: { code: 'F-1', receivedOn: '2026-03-01', bestBefore: '2026-08-31', photos: [] },
    })
  })

  it('is found to be another one that is there: what was weighed stays as it was said, and both codes are shown', async () => {
    const real = await receive(dose().ingredient.id, 'F-12')
    const lotId = await sayLot(dose(), 'F-21')
    const match = (sameAsId: string) => matchLot.call(as(bakery.head), { lotId, sameAsId })
    const stray = await receive(same().ingredient.id, 'F-21 b')
    const ended = await receive(dose().ingredient.id, 'F-0')
    valueOf(await endLot.call(as(bakery.head), { lotId: ended, why: 'used_up' }))
    expect(await came(entry(dose(), doughOf(2), ['F-22']))).toBe('kept')
    const unsure = (await db().lot.findFirstOrThrow({ where: { code: 'F-22' } })).id
    for (const other of [lotId, stray, ended, unsure, uuid()])
      expect(refusalOf(await match(other)), other).toBe('invalid sameAsId:lot-not-another')
    expect(refusalOf(await matchLot.call(as(bakery.early), { lotId, sameAsId: real }))).toBe('not-allowed')
    const rows = await taken()
    valueOf(await match(real))
    expect(refusalOf(await match(real))).toBe('stale')
    expect(await taken()).toEqual(rows)
    expect(await lastRecord()).toMatchObject({ action: 'stores.match-lot', after: { code: 'F-21', is: 'F-12' } })
    const shownOf = async (who: TestPerson) =>
      valueOf(await getBatch.call(as(who), { batchId: doughOf(1).id })).weighed!.find(
        ({ ingredient }) => ingredient.id === dose().ingredient.id,
      )!.stands!.as
    expect(await shownOf(bakery.early)).toBeNull()
    valueOf(await openDoughKey.call(as(bakery.early), { batchId: doughOf(1).id }))
    expect((await shownOf(bakery.early))!.lots).toMatchObject([{ code: 'F-21', sameAs: 'F-12', isToConfirm: false }])
    const { ended: gone } = valueOf(await listLots.call(as(bakery.early), { ingredientId: dose().ingredient.id }))
    expect(gone.rows).toContainEqual(
      expect.objectContaining({ code: 'F-21', sameAs: 'F-12', wasSaid: true, entered: null }),
    )
    // The same slip once more makes no lot.
    const count = (await lots()).length
    expect(await came(entry(dose(), doughs.find(({ id, arm }) => arm === 1 && id !== doughOf(1).id)!, ['f-21']))).toBe(
      'kept',
    )
    expect(await lots()).toHaveLength(count)
  })

  it('is neither confirmed nor matched where it was received at the desk', async () => {
    const [one, other] = [await receive(same().ingredient.id, 'F-1'), await receive(same().ingredient.id, 'F-2')]
    const days = { lotId: one, receivedOn: '2026-03-01', bestBefore: null }
    expect(refusalOf(await confirmLot.call(as(bakery.head), days))).toBe('invalid lotId:lot-to-confirm-only')
    expect(refusalOf(await matchLot.call(as(bakery.head), { lotId: one, sameAsId: other }))).toBe(
      'invalid lotId:lot-to-confirm-only',
    )
    expect(await lots()).toMatchObject([{ endedAt: null }, { endedAt: null }])
  })

  it('is named so where something is weighed, waits for those who may confirm, and may be ended as a slip', async () => {
    const lotId = await sayLot(same(), 'F-1')
    const { weighed } = valueOf(await getBatch.call(as(bakery.early), { batchId: doughOf(2).id }))
    expect(weighed!.find(({ ingredient }) => ingredient.id === same().ingredient.id)!.lots).toEqual([
      { id: lotId, code: 'F-1', isPast: false, isToConfirm: true },
    ])
    const waits = async (who: TestPerson) => valueOf(await listWaiting.call(as(who), {})).toConfirm
    expect(await waits(bakery.head)).toMatchObject({ count: 1, rows: [{ lotId, code: 'F-1' }] })
    expect(await waits(bakery.early)).toBeNull()
    valueOf(await endLot.call(as(bakery.head), { lotId, why: 'mistaken' }))
    expect(await waits(bakery.head)).toMatchObject({ count: 0 })
    expect((await toConfirm(same())).count).toBe(0)
  })

  it('tells who said it only where that tells no dough: to who knows it, and to everybody after the closing', async () => {
    await sayLot(dose(), 'M-1')
    const said = async (who: TestPerson, now = before) => (await toConfirm(dose(), who, now)).rows[0]!.said
    for (const who of [bakery.early, bakery.head, bakery.owner]) expect(await said(who)).toBeNull()
    // The record neither.
    expect(JSON.stringify(await lastRecord())).not.toContain('M-1')
    valueOf(await openDoughKey.call(as(bakery.early), { batchId: doughOf(1).id }))
    expect(await said(bakery.early)).toMatchObject({ who: bakery.early.name, station: null })
    expect(await said(bakery.head)).toBeNull()
    const { revision } = await db().trial.findFirstOrThrow({ where: { bakeryId: bakery.bakeryId } })
    const after = new Date(testNow.getTime() + 60_000)
    valueOf(
      await closeTrial.call(as(bakery.owner, after), {
        trialId: trial.trialId,
        seenRevision: revision,
        early: false,
        reason: 'all there is',
      }),
    )
    expect(await said(bakery.head, after)).toMatchObject({ who: bakery.early.name })
  })

  it('stays as it was said, also past the app', async () => {
    const lotId = await sayLot(same(), 'F-1')
    const change = (sets: string) =>
      connected(database.ownerUrl, (client) => client.query(`UPDATE lot SET ${sets} WHERE id = $1`, [lotId]))
    for (const sets of [
      `code = 'F-2'`,
      `entered_at = now()`,
      `said_with_id = NULL`,
      `received_on = '2026-01-01'`,
      `best_before = '2030-01-01'`,
    ])
      await expect(change(sets), sets).rejects.toMatchObject({ code: 'EV004' })
    await change(`confirmed_at = now(), confirmed_by_id = entered_by_id, received_on = '2026-01-01'`)
    for (const sets of [`confirmed_at = NULL, confirmed_by_id = NULL`, `received_on = '2026-01-02'`])
      await expect(change(sets), sets).rejects.toMatchObject({ code: 'EV004' })
    await expect(
      change(`ended_why = 'other_lot', ended_at = now(), ended_by_id = entered_by_id, same_as_id = id`),
    ).rejects.toThrow(/lot_not_same_as_itself/)
  })
})

describe('a photo of a label', () => {
  const labelOf = (line: TrialLine, code: string) => ({
    batchId: null,
    piece: null,
    label: { ingredientId: line.ingredient.id, code },
  })
  const take = async (line: TrialLine, code: string) => {
    const picture = await fromCamera()
    const said = { ...saidOf(picture, doughOf(1).id), ...labelOf(line, code) }
    return { said, sent: await sendWhole(as(bakery.early), picture, said as never) }
  }

  it('is shown with the lot of its code, before or after that came, and with no dough', async () => {
    const { said, sent } = await take(dose(), 'm-1')
    expect(sent).toMatchObject({ outcome: 'kept' })
    const records = await db().auditEntry.findMany({ where: { bakeryId: bakery.bakeryId } })
    for (const { entryText } of records) expect(entryText).not.toContain(said.id)
    const lotId = await sayLot(dose(), 'M-1')
    const [row] = (await toConfirm(dose())).rows
    expect(row!.photos).toEqual([said.id])
    valueOf(await getPhoto.call(as(bakery.head), { photoId: said.id, isSmall: true }))
    for (const { id } of doughs)
      expect(valueOf(await listPhotos.call(as(bakery.head), { batchId: id })).photos).toEqual([])
    valueOf(await confirmLot.call(as(bakery.head), { lotId, receivedOn: '2026-03-01', bestBefore: null }))
    const { hash } = await db().photo.findFirstOrThrow({ where: { id: said.id } })
    expect((await lastRecord()).after).toMatchObject({ photos: [hash] })
    expect(await sendWhole(as(bakery.early), await fromCamera(), said as never)).toMatchObject({ isAgain: true })
  })

  it('is of a dough or of a label of an ingredient that is there, and no more than a few of one', async () => {
    const picture = await fromCamera()
    const refused = async (more: object) =>
      refusalOf(await sendPhoto.call(as(bakery.early), { ...saidOf(picture, doughOf(1).id), ...more }))
    const label = labelOf(same(), 'F-1')
    expect(await refused({ label: label.label })).toBe('invalid batchId:dough-or-label')
    expect(await refused({ batchId: null })).toBe('invalid batchId:dough-or-label')
    expect(await refused({ ...label, piece: 1 })).toBe('invalid batchId:dough-or-label')
    expect(await refused({ ...label, label: { ingredientId: uuid(), code: 'F-1' } })).toBe('not-found')
    expect(await refused({ ...label, label: { ...label.label, code: 'x'.repeat(61) } })).toBe(
      'invalid label.code:too-long',
    )
    await db().photo.createMany({
      data: Array.from({ length: photoLimits.ofOneLabel }, () => ({
        bakeryId: bakery.bakeryId,
        id: uuid(),
        ingredientId: same().ingredient.id,
        lotCode: 'F-1',
        personId: bakery.late.personId,
        takenAt: before,
        receivedAt: before,
        sentBytes: 1,
        sentHash: sha256(picture),
        mediaType: 'image/jpeg',
        bytes: 1,
        width: 1,
        height: 1,
        hash: sha256(picture),
        small: new Uint8Array([1]),
      })),
    })
    expect(await refused(label)).toBe('label-full-of-photos')
  })
})
