import { randomUUID } from 'node:crypto'
import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { undoMs } from '@/lib/kitchen/batches/rules'
import { isOutState } from '@/lib/kitchen/conduct/is-out-state'
import { logReading } from '@/lib/kitchen/readings/log-reading'
import { addDay } from '@/lib/kitchen/repairs/add-day'
import { bakeAgain } from '@/lib/kitchen/repairs/bake-again'
import { getRepairs } from '@/lib/kitchen/repairs/get-repairs'
import { nextCodes } from '@/lib/kitchen/repairs/next-codes'
import { swapDoughs } from '@/lib/kitchen/repairs/swap-doughs'
import { beginBatch } from '@/lib/kitchen/shifts/begin-batch'
import { getBatch } from '@/lib/kitchen/shifts/get-batch'
import { getShift } from '@/lib/kitchen/shifts/get-shift'
import { moveBatch } from '@/lib/kitchen/shifts/move-batch'
import { openDoughKey } from '@/lib/kitchen/shifts/open-dough-key'
import { undoMove } from '@/lib/kitchen/shifts/undo-move'
import { dateMixingDays } from '@/lib/kitchen/trials/date-mixing-days'
import { makeApprovedTrial, type ApprovedTrial } from '../../support/approved-trial'
import {
  callerOf,
  makeBakery,
  refusalOf,
  testNow,
  valueOf,
  type TestBakery,
  type TestPerson,
} from '../../support/bakery'
import { closeAsItIs } from '../../support/close-as-it-is'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery
let trial: ApprovedTrial

beforeAll(async () => {
  database = await freshDatabase()
  neighbour = await makeBakery('Next Door')
})
afterAll(() => database.drop())
beforeEach(async () => {
  bakery = await makeBakery('Mill Row')
  // Control, one with salt, one with milk; two mixing days.
  trial = await makeApprovedTrial(bakery, { arms: 3, days: 2 })
})

const minute = 60_000
const hour = 60 * minute
const at = (ms: number, who: TestPerson = bakery.early) =>
  callerOf(who.sessionSecret, new Date(testNow.getTime() + ms), who.password)
const idAt = (place: number) => trial.batches[place]!.batchId
const row = (id: string) =>
  db().batch.findUniqueOrThrow({
    where: { bakeryId_id: { bakeryId: bakery.bakeryId, id } },
    include: { mixingDay: true },
  })
const begin = async (id: string, ms = 0, more: object = {}) =>
  valueOf(
    await beginBatch.call(at(ms), {
      batchId: id,
      seenRevision: (await row(id)).revision,
      cleanDownDone: true,
      swapWhy: 'in the test',
      ...more,
    }),
  )
const move = async (id: string, to: string, ms = 0) =>
  moveBatch.call(at(ms), {
    batchId: id,
    seenRevision: (await row(id)).revision,
    to,
    ...(isOutState(to) && { why: 'the tray fell' }),
  })
/** Out, by the way that its end asks for. */
async function take(id: string, to: string, ms = 0): Promise<void> {
  if (to !== 'not_baked') await begin(id, ms)
  valueOf(await move(id, to, ms))
}
const again = (id: string, ms = 0, who?: TestPerson) => bakeAgain.call(at(ms, who), { batchId: id })
const dayFor = (number: number, ms = 0, who: TestPerson = bakery.head) =>
  addDay.call(at(ms, who), { trialId: trial.trialId, number })
const swap = async (id: string, otherId: string, change: object = {}) =>
  swapDoughs.call(at(0), {
    batchId: id,
    seenTurn: valueOf(await getBatch.call(at(0), { batchId: id })).turn,
    otherId,
    why: 'the milk comes at six',
    ...change,
  })
const rack = async (ms = 0) =>
  valueOf(await getShift.call(at(ms), { after: null })).trials.rows.find(({ id }) => id === trial.trialId)!
const seen = async (id: string, ms = 0, who?: TestPerson) => valueOf(await getBatch.call(at(ms, who), { batchId: id }))
const repairs = async () => valueOf(await getRepairs.call(bakery.head.caller, { trialId: trial.trialId }))
const close = () => closeAsItIs(bakery, trial.trialId, testNow, 'stopped', 'over')

describe('a dough that is out', () => {
  it.each(['lost', 'set_aside', 'not_baked'])(
    'and was %s is baked again, last in its day, under the next code',
    async (to) => {
      await take(idAt(1), to)
      const { batchId, code } = valueOf(await again(idAt(1)))
      const used = trial.batches.map((batch) => batch.code)
      expect([code]).toEqual(nextCodes({ seed: 'seed', used, count: 1 }))
      expect(await row(batchId)).toMatchObject({
        code,
        armId: trial.batches[1]!.armId,
        mixingDay: { number: 1 },
        plannedOrder: 4,
        state: 'waiting',
        begunAt: null,
        revision: 1,
        // The dough before it in the day brought milk.
        cleanDownBefore: true,
      })
      expect(await seen(idAt(1))).toMatchObject({
        loss: { again: { id: batchId, code }, whyNot: 'baked-again-already' },
      })
      expect(await seen(batchId)).toMatchObject({ loss: null, madeFor: { id: idAt(1), code: trial.batches[1]!.code } })
      const { toBakeAgain, batches } = await rack()
      expect(toBakeAgain).toEqual([])
      expect(
        batches
          .filter(({ dayNumber }) => dayNumber === 1)
          .map((batch) => batch.code)
          .at(-1),
      ).toBe(code)
      const entry = await db().auditEntry.findFirstOrThrow({
        where: { bakeryId: bakery.bakeryId, action: 'repairs.bake-again', targetId: idAt(1) },
      })
      expect(entry.entryText).toContain(code)
    },
  )

  it('is baked again once; what was made for it may be lost and baked again itself', async () => {
    await take(idAt(0), 'lost')
    const first = valueOf(await again(idAt(0)))
    expect(refusalOf(await again(idAt(0)))).toBe('baked-again-already')
    expect(refusalOf(await again(first.batchId))).toBe('not-out')
    await take(first.batchId, 'lost', 1)
    const second = valueOf(await again(first.batchId, 2))
    expect(second.code).not.toBe(first.code)
    expect((await repairs()).repairs).toMatchObject([
      { number: 1, kind: 'bake_again', code: trial.batches[0]!.code, otherCode: first.code, by: { name: 'Esi' } },
      { number: 2, kind: 'bake_again', code: first.code, otherCode: second.code },
    ])
  })

  it('is baked again once by two people at one moment, and by a form that comes twice', async () => {
    await take(idAt(0), 'lost')
    const both = await Promise.all([again(idAt(0)), again(idAt(0), 0, bakery.late)])
    expect(both.filter(({ ok }) => ok)).toHaveLength(1)
    await take(idAt(1), 'lost')
    const form = { ...at(0), formId: randomUUID() }
    const sent = await Promise.all([1, 2, 3].map(() => bakeAgain.call(form, { batchId: idAt(1) })))
    expect(new Set(sent.map((each) => valueOf(each).code)).size).toBe(1)
    expect(await db().batch.count({ where: { bakeryId: bakery.bakeryId, trialId: trial.trialId } })).toBe(8)
  })

  it('is told to the floor by its code, and nothing else', async () => {
    await take(idAt(0), 'lost')
    const { toBakeAgain } = await rack()
    expect(toBakeAgain).toMatchObject([{ code: trial.batches[0]!.code, state: 'lost', when: 'today', whyNot: null }])
    const answered = valueOf(await again(idAt(0)))
    expect(Object.keys(answered).sort()).toEqual(['batchId', 'code'])
    for (const told of [toBakeAgain, answered, await seen(answered.batchId), await repairs()]) {
      const text = JSON.stringify(told)
      for (const armId of trial.armIds) expect(text).not.toContain(armId)
      expect(text).not.toMatch(/Control|milk powder|"arm"/)
    }
  })

  it('is known under its new code by whoever knew it', async () => {
    valueOf(await openDoughKey.call(at(0), { batchId: idAt(0) }))
    await take(idAt(0), 'lost')
    const { batchId } = valueOf(await again(idAt(0), minute, bakery.late))
    expect((await seen(batchId, 2 * minute)).key).not.toBeNull()
    expect((await seen(batchId, 2 * minute, bakery.late)).key).toBeNull()
  })
})

describe('baking again is refused', () => {
  it.each(['waiting', 'weighing', 'in_work', 'baked'])('for a dough that is %s', async (state) => {
    if (state !== 'waiting') await begin(idAt(0))
    if (state === 'in_work' || state === 'baked') valueOf(await move(idAt(0), 'in_work'))
    if (state === 'baked') valueOf(await move(idAt(0), 'baked'))
    expect(refusalOf(await again(idAt(0)))).toBe('not-out')
  })

  it('for one that counts, because what decides was read and nothing was noted before', async () => {
    await begin(idAt(0))
    const reading = {
      id: uuid(),
      batchId: idAt(0),
      measureId: trial.measures['loaf-volume'],
      piece: 1,
      repeat: 1,
      value: '1900',
      unit: 'mL',
      takenAt: testNow.toISOString(),
    }
    valueOf(await logReading.call(at(minute), reading))
    expect(refusalOf(await move(idAt(0), 'lost', 2 * minute))).toBe('read-before-any-cause')
    expect(refusalOf(await again(idAt(0), 2 * minute))).toBe('not-out')
  })

  it('once the readings are closed, in the database as well', async () => {
    await take(idAt(0), 'lost')
    await close()
    expect(refusalOf(await again(idAt(0)))).toBe('trial-stopped')
    expect(refusalOf(await dayFor(1))).toBe('trial-stopped')
    expect(refusalOf(await swap(idAt(1), idAt(2)))).toBe('trial-stopped')
    const { toBakeAgain, shortDays } = await repairs()
    expect([toBakeAgain, shortDays]).toEqual([[], []])
    const days = await db().mixingDay.findMany({ where: { bakeryId: bakery.bakeryId, trialId: trial.trialId } })
    await connected(database.superUrl, async (client) => {
      const sql = `INSERT INTO repair (bakery_id, id, trial_id, number, kind, day_id, other_day_id, person_id, at) VALUES ($1, $2, $3, 1, 'add_day', $4, $5, $6, now())`
      const values = [bakery.bakeryId, randomUUID(), trial.trialId, days[0]!.id, days[1]!.id, bakery.head.personId]
      await expect(client.query(sql, values)).rejects.toMatchObject({ code: 'EV007' })
    })
  })

  it('before the plan is approved', async () => {
    trial = await makeApprovedTrial(bakery, { isUndecided: true })
    expect(refusalOf(await again(idAt(0)))).toBe('trial-not-approved')
    expect(refusalOf(await dayFor(1))).toBe('trial-not-approved')
  })

  it('to the neighbour', async () => {
    await take(idAt(0), 'lost')
    for (const who of [neighbour.owner, neighbour.early])
      expect(refusalOf(await again(idAt(0), 0, who))).toBe('not-found')
    expect(refusalOf(await dayFor(1, 0, neighbour.owner))).toBe('not-found')
    expect(refusalOf(await getRepairs.call(neighbour.owner.caller, { trialId: trial.trialId }))).toBe('not-found')
  })

  it('when its mixing day is over, and not while its shift goes on after midnight', async () => {
    await take(idAt(0), 'lost')
    // Before nine in the evening in the bakery's zone, and now it is five in the morning, or nine.
    const begunAt = (ms: number) =>
      db().batch.update({
        where: { bakeryId_id: { bakeryId: bakery.bakeryId, id: idAt(0) } },
        data: { begunAt: new Date(testNow.getTime() - ms) },
      })
    await begunAt(12 * hour + 1)
    expect((await seen(idAt(0))).loss?.whyNot).toBe('mixing-day-over')
    expect(refusalOf(await again(idAt(0)))).toBe('mixing-day-over')
    expect((await rack()).toBakeAgain).toEqual([])
    await begunAt(12 * hour)
    valueOf(await again(idAt(0)))
  })

  it('when its date has passed, until that is moved', async () => {
    valueOf(await move(idAt(0), 'not_baked'))
    const date = (day: string, seenDay: string | null) =>
      dateMixingDays.call(bakery.head.caller, {
        trialId: trial.trialId,
        days: [{ number: 1, seen: seenDay, day }],
      })
    expect((await rack()).toBakeAgain).toMatchObject([{ when: 'its-day' }])
    valueOf(await date('2026-03-02', null))
    expect((await rack()).toBakeAgain).toMatchObject([{ when: 'today' }])
    valueOf(await date('2026-03-01', '2026-03-02'))
    expect(refusalOf(await again(idAt(0)))).toBe('mixing-day-over')
    // Five in the morning is still the night before where the day turns at six.
    const turnsAt = (dayTurnsAtH: number) =>
      db().bakery.update({ where: { bakeryId: bakery.bakeryId }, data: { dayTurnsAtH } })
    await turnsAt(6)
    expect((await rack()).toBakeAgain).toMatchObject([{ when: 'today' }])
    await turnsAt(0)
    valueOf(await date('2026-03-05', '2026-03-01'))
    expect((await rack()).toBakeAgain).toMatchObject([{ when: { date: '2026-03-05' } }])
    valueOf(await again(idAt(0)))
  })
})

describe('a dough that comes back by undo', () => {
  it('does not once it was baked again: there are never two', async () => {
    await take(idAt(0), 'lost')
    valueOf(await again(idAt(0), 1000))
    const { revision } = await row(idAt(0))
    const undo = await undoMove.call(at(2000), { batchId: idAt(0), seenRevision: revision })
    expect(refusalOf(undo)).toBe('undo-built-on')
    expect((await row(idAt(0))).state).toBe('lost')
  })

  it('does not once a day was added for its own, and does when one was added for another', async () => {
    await take(idAt(0), 'lost')
    valueOf(await dayFor(1, 1000))
    const back = async (id: string, ms: number) =>
      undoMove.call(at(ms), { batchId: id, seenRevision: (await row(id)).revision })
    expect(refusalOf(await back(idAt(0), 2000))).toBe('undo-built-on')
    await take(idAt(3), 'not_baked', 3000)
    valueOf(await back(idAt(3), 3000 + undoMs))
  })

  it('once only: to be baked again or back, whoever is first', async () => {
    await take(idAt(0), 'lost')
    const { revision } = await row(idAt(0))
    const both = await Promise.all([
      again(idAt(0), 1000, bakery.late),
      undoMove.call(at(1000), { batchId: idAt(0), seenRevision: revision }),
    ])
    expect(both.filter(({ ok }) => ok)).toHaveLength(1)
    const standing = await db().batch.count({
      where: {
        bakeryId: bakery.bakeryId,
        trialId: trial.trialId,
        armId: trial.batches[0]!.armId,
        mixingDay: { number: 1 },
        state: { notIn: ['lost', 'set_aside', 'not_baked'] },
      },
    })
    expect(standing).toBe(1)
  })
})

describe('a whole mixing day', () => {
  it('is added for one that is short of a dough: every dough again, in an order of its own, without a date', async () => {
    await take(idAt(1), 'not_baked')
    expect((await repairs()).shortDays).toEqual([{ number: 1, short: 1 }])
    expect(valueOf(await dayFor(1)).number).toBe(3)
    const day = await db().mixingDay.findFirstOrThrow({
      where: { bakeryId: bakery.bakeryId, trialId: trial.trialId, number: 3 },
      include: { batches: { orderBy: { plannedOrder: 'asc' } } },
    })
    expect(day.day).toBeNull()
    expect(day.batches.map(({ armId }) => armId).sort()).toEqual([...trial.armIds].sort())
    expect(day.batches.map(({ plannedOrder, state }) => [plannedOrder, state])).toEqual([
      [1, 'waiting'],
      [2, 'waiting'],
      [3, 'waiting'],
    ])
    const used = trial.batches.map(({ code }) => code)
    expect(day.batches.map(({ code }) => code)).toEqual(nextCodes({ seed: 'seed', used, count: 3 }))
    expect((await rack()).batches.map(({ dayNumber }) => dayNumber)).toEqual([1, 1, 1, 2, 2, 2, 3, 3, 3])
    const dated = { trialId: trial.trialId, days: [{ number: 3, seen: null, day: '2026-03-09' }] }
    valueOf(await dateMixingDays.call(bakery.head.caller, dated))
  })

  it('is added for no day that is whole, once for each, and not beside doughs that are baked again', async () => {
    expect(refusalOf(await dayFor(1))).toBe('day-whole')
    expect(refusalOf(await dayFor(3))).toBe('not-found')
    await take(idAt(0), 'lost')
    valueOf(await again(idAt(0)))
    expect(refusalOf(await dayFor(1))).toBe('day-whole')
    await take(idAt(3), 'lost', 1)
    valueOf(await dayFor(2, 2))
    expect(refusalOf(await dayFor(2, 3))).toBe('day-added-for')
    expect(refusalOf(await again(idAt(3), 3))).toBe('day-added-for')
    expect(refusalOf(await dayFor(3, 3))).toBe('day-whole')
  })

  it('is added once by two people at one moment', async () => {
    await take(idAt(0), 'lost')
    const both = await Promise.all([dayFor(1), dayFor(1, 0, bakery.owner), dayFor(1)])
    expect(both.filter(({ ok }) => ok)).toHaveLength(1)
  })

  it('is added by those who approve plans', async () => {
    await take(idAt(0), 'lost')
    expect(refusalOf(await dayFor(1, 0, bakery.early))).toBe('not-allowed')
    expect(valueOf(await getRepairs.call(bakery.early.caller, { trialId: trial.trialId }))).toMatchObject({
      mayBakeAgain: true,
      mayAddDay: false,
    })
  })
})

describe('doughs that wait', () => {
  const codes = async () => (await rack()).batches.map(({ code }) => code)

  it('exchange their places, for a reason; the planned ones stay with them', async () => {
    const before = await codes()
    valueOf(await swap(idAt(0), idAt(1)))
    expect(await codes()).toEqual([before[1], before[0], ...before.slice(2)])
    expect(await row(idAt(0))).toMatchObject({ plannedOrder: 1, revision: 1 })
    expect(await seen(idAt(0))).toMatchObject({ turn: 2, plannedOrder: 1, firstCode: before[1] })
    const first = await beginBatch.call(at(0), { batchId: idAt(0), seenRevision: 1, cleanDownDone: false })
    expect(refusalOf(first)).toBe('before-its-turn swapWhy:missing')
    valueOf(await beginBatch.call(at(0), { batchId: idAt(1), seenRevision: 1, cleanDownDone: false }))
    expect(refusalOf(await swap(idAt(2), idAt(0), { why: ' ' }))).toMatch(/^invalid why/)
  })

  it('show where to clean down now, and ask for it', async () => {
    const cleaned = async () => (await rack()).batches.map(({ cleanDownFirst }) => cleanDownFirst)
    expect(await cleaned()).toEqual([false, false, false, true, false, false])
    // The one with milk comes before the one with salt.
    valueOf(await swap(idAt(1), idAt(2)))
    expect(await cleaned()).toEqual([false, false, true, true, false, false])
    await begin(idAt(0))
    await begin(idAt(2), 1)
    const plain = { batchId: idAt(1), seenRevision: 1 }
    expect(refusalOf(await beginBatch.call(at(2), { ...plain, cleanDownDone: false }))).toBe(
      'clean-down-first cleanDownDone:clean-down-needed',
    )
    valueOf(await beginBatch.call(at(2), { ...plain, cleanDownDone: true }))
  })

  it('do not exchange with one that is begun, of another day, next door, or with themselves', async () => {
    expect(refusalOf(await swap(idAt(0), idAt(3)))).toBe('not-of-one-day')
    expect(refusalOf(await swap(idAt(0), idAt(0)))).toBe('not-of-one-day')
    expect(refusalOf(await swap(idAt(0), randomUUID()))).toBe('not-found')
    const other = await makeApprovedTrial(neighbour)
    expect(refusalOf(await swap(idAt(0), other.batches[0]!.batchId))).toBe('not-found')
    expect(refusalOf(await swap(idAt(0), (await makeApprovedTrial(bakery)).batches[0]!.batchId))).toBe('not-found')
    await begin(idAt(0))
    expect(refusalOf(await swap(idAt(0), idAt(1)))).toBe('exchange-of-waiting')
    expect(refusalOf(await swap(idAt(1), idAt(0)))).toBe('exchange-of-waiting')
  })

  it('are not exchanged back by one who saw them as they were', async () => {
    const seenTurn = (await seen(idAt(0))).turn
    const both = await Promise.all([swap(idAt(0), idAt(1), { seenTurn }), swap(idAt(0), idAt(1), { seenTurn })])
    expect(both.filter(({ ok }) => ok)).toHaveLength(1)
    expect(refusalOf(await swap(idAt(0), idAt(1), { seenTurn }))).toMatch(/^stale/)
  })
})

describe('a trial that was repaired', () => {
  it('is closed with all its doughs', async () => {
    await take(idAt(0), 'lost')
    valueOf(await again(idAt(0)))
    await take(idAt(3), 'not_baked', 1)
    valueOf(await dayFor(2, 2))
    valueOf(await swap(idAt(1), idAt(2)))
    await close()
    const { doughs } = JSON.parse((await db().closing.findFirstOrThrow({ where: { trialId: trial.trialId } })).text)
    expect(doughs).toHaveLength(10)
  })

  it.each<[string, string | null]>([
    ['under a code that somebody chose', '998'],
    ['as a repair would have made it', null],
  ])('is not closed with one that no repair has made, %s', async (_, chosen) => {
    await take(idAt(0), 'lost')
    const { armId, mixingDayId } = await row(idAt(0))
    const used = trial.batches.map((batch) => batch.code)
    const code = chosen ?? nextCodes({ seed: 'seed', used, count: 1 })![0]!
    const forged = { kind: 'dough', plannedOrder: 4, cleanDownBefore: false, state: 'waiting', revision: 1 } as const
    await db().batch.create({
      data: {
        bakeryId: bakery.bakeryId,
        id: randomUUID(),
        trialId: trial.trialId,
        armId,
        mixingDayId,
        code,
        ...forged,
      },
    })
    await expect(close()).rejects.toMatchObject({ code: 'not-as-planned', facts: { code } })
  })
})
