import type pg from 'pg'
import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { hashSecret } from '@/lib/auth/secret'
import { db } from '@/lib/db/client'
import { listWaiting } from '@/lib/kitchen/desk/list-waiting'
import { checkRecords } from '@/lib/kitchen/jobs/check-records'
import { clearRunOut } from '@/lib/kitchen/jobs/clear-run-out'
import { makeStation } from '@/lib/kitchen/stations/make-station'
import { enrolledStation, givePin, tokenAt } from '../../support/stations'
import type { Job, OwnJobName } from '@/lib/kitchen/jobs/job'
import { listJobs } from '@/lib/kitchen/jobs/list-jobs'
import { runDueJobs } from '@/lib/kitchen/jobs/run-due-jobs'
import { callerOf, makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
  neighbour = await makeBakery('Next Door')
})
afterAll(() => database.drop())
beforeEach(() => db().jobRun.deleteMany())

const dayMs = 24 * 60 * 60_000
const never = new AbortController().signal
const later = (ms: number) => new Date(testNow.getTime() + ms)
const run = (jobs: readonly Job[], now = testNow) => runDueJobs({ jobs, now: () => now, signal: never })
const runOf = (name: OwnJobName) => db().jobRun.findUnique({ where: { name } })

/** A job that counts its runs, and does in each what it is given to do. */
function counting(name: OwnJobName, work: (signal: AbortSignal) => Promise<void> = () => Promise.resolve()) {
  const seen = { runs: 0 }
  const job: Job = {
    name,
    everyMs: dayMs,
    run({ signal }) {
      seen.runs += 1
      return work(signal)
    },
  }
  return { job, seen }
}

/** Holds whoever waits for it until it is opened, and tells when somebody does. */
function gate() {
  let open = () => {}
  let reached = () => {}
  const opened = new Promise<void>((resolve) => (open = resolve))
  const somebodyWaits = new Promise<void>((resolve) => (reached = resolve))
  return { pass: () => (reached(), opened), open, somebodyWaits }
}

describe('the jobs of an install', () => {
  it('run when they are due, and note when they began and ended', async () => {
    const { job, seen } = counting('check-records')
    await run([job])
    await run([job], later(dayMs - 1))
    expect(seen.runs).toBe(1)
    expect(await runOf('check-records')).toEqual({
      name: 'check-records',
      beganAt: testNow,
      endedAt: testNow,
      outcome: 'done',
    })
    await run([job], later(dayMs))
    expect(seen.runs).toBe(2)
  })

  it('run one at a time, whichever of two runners came first', async () => {
    const held = gate()
    const first = counting('check-records', held.pass)
    const other = counting('clear-run-out')
    const running = run([first.job, other.job])
    await held.somebodyWaits
    await run([first.job, other.job])
    expect([first.seen.runs, other.seen.runs]).toEqual([1, 0])
    held.open()
    await running
    await run([first.job, other.job])
    expect([first.seen.runs, other.seen.runs]).toEqual([1, 1])
  })

  it('wait for another process that is at it', async () => {
    const { job, seen } = counting('check-records')
    await connected(database.appUrl, async (elsewhere: pg.Client) => {
      await elsewhere.query('SELECT pg_advisory_lock(727274003)')
      await run([job])
      expect(seen.runs).toBe(0)
      expect(await runOf('check-records')).toBeNull()
    })
    await run([job])
    expect(seen.runs).toBe(1)
  })

  it('are told when the connection that holds the lock is cut, have no end then, and are begun again', async () => {
    const held = gate()
    const told = gate()
    const cut = counting('check-records', async (signal) => {
      signal.addEventListener('abort', () => void told.pass())
      await held.pass()
      signal.throwIfAborted()
    })
    const next = counting('clear-run-out')
    const running = run([cut.job, next.job])
    await held.somebodyWaits
    await connected(database.superUrl, (admin) =>
      admin.query(
        `SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE application_name = 'evendough-jobs' AND datname = current_database()`,
      ),
    )
    await told.somebodyWaits
    held.open()
    await expect(running).rejects.toThrow()
    expect(await runOf('check-records')).toMatchObject({ beganAt: testNow, endedAt: null, outcome: null })
    expect(next.seen.runs).toBe(0)
    const again = counting('check-records')
    await run([again.job], later(1))
    expect(again.seen.runs).toBe(1)
    expect(await runOf('check-records')).toMatchObject({ beganAt: later(1), outcome: 'done' })
  })

  it('stop between two steps when the app ends, and begin no other', async () => {
    const stopping = new AbortController()
    const first = counting('check-records', (signal) => {
      stopping.abort()
      signal.throwIfAborted()
      return Promise.resolve()
    })
    const next = counting('clear-run-out')
    await runDueJobs({ jobs: [first.job, next.job], now: () => testNow, signal: stopping.signal })
    expect(await runOf('check-records')).toMatchObject({ endedAt: null })
    expect(next.seen.runs).toBe(0)
  })

  it('that throw are noted as failed, end neither the runner nor another job, and are tried again within the hour', async () => {
    const bad = counting('check-records', () => Promise.reject(new Error('no')))
    const good = counting('clear-run-out')
    await run([bad.job, good.job])
    expect([await runOf('check-records'), await runOf('clear-run-out')]).toMatchObject([
      { outcome: 'failed', endedAt: testNow },
      { outcome: 'done' },
    ])
    await run([bad.job, good.job], later(60 * 60_000 - 1))
    expect(bad.seen.runs).toBe(1)
    await run([bad.job, good.job], later(60 * 60_000))
    expect([bad.seen.runs, good.seen.runs]).toEqual([2, 1])
  })
})

describe('clearing away what has run out', () => {
  const daysAgo = (days: number) => new Date(testNow.getTime() - days * dayMs)

  async function addSession({ openedAt, endedAt = null }: { openedAt: Date; endedAt?: Date | null }) {
    const id = uuid()
    const whose = { bakeryId: bakery.bakeryId, personId: bakery.late.personId }
    await db().session.create({
      data: {
        ...whose,
        id,
        openedAt,
        lastSeenAt: openedAt,
        endsAt: new Date(openedAt.getTime() + dayMs / 2),
        endedAt,
        device: 'test',
      },
    })
    await db().signInPointer.create({
      data: { hash: hashSecret('session', id), kind: 'session', bakeryId: bakery.bakeryId, targetId: id },
    })
    return id
  }
  async function addLink(more: { createdAt: Date; endsAt?: Date; usedAt?: Date; withdrawnAt?: Date }) {
    const id = uuid()
    const { createdAt, endsAt = new Date(createdAt.getTime() + dayMs) } = more
    await db().invitation.create({
      data: {
        bakeryId: bakery.bakeryId,
        id,
        purpose: 'join',
        name: 'Nia',
        email: `${id}@mill-row.example`,
        role: 'shift_baker',
        invitedById: bakery.owner.personId,
        onMachine: false,
        ...more,
        endsAt,
      },
    })
    await db().signInPointer.create({
      data: { hash: hashSecret('invitation', id), kind: 'invitation', bakeryId: bakery.bakeryId, targetId: id },
    })
    return id
  }
  const there = async (ids: readonly string[]) => {
    const [sessions, links, pointers] = await Promise.all([
      db().session.findMany({ where: { id: { in: [...ids] } }, select: { id: true } }),
      db().invitation.findMany({ where: { id: { in: [...ids] } }, select: { id: true } }),
      db().signInPointer.findMany({ where: { targetId: { in: [...ids] } }, select: { targetId: true } }),
    ])
    const rows = [...sessions, ...links].map(({ id }) => id)
    expect(pointers.map(({ targetId }) => targetId).sort()).toEqual([...rows].sort())
    return ids.map((id) => rows.includes(id))
  }
  const kept = async () =>
    Promise.all([
      db().auditEntry.count(),
      db().answeredForm.count(),
      db().person.count(),
      db().signInPointer.count({ where: { kind: 'email' } }),
    ])

  it('takes sessions and links that ended more than ninety days ago, with their pointers, and nothing else', async () => {
    const ids = [
      await addSession({ openedAt: daysAgo(91) }),
      await addSession({ openedAt: daysAgo(90) }),
      await addSession({ openedAt: daysAgo(92), endedAt: daysAgo(91) }),
      await addSession({ openedAt: daysAgo(0.1) }),
      await addLink({ createdAt: daysAgo(92) }),
      await addLink({ createdAt: daysAgo(90.5) }),
      await addLink({ createdAt: daysAgo(91.5), usedAt: daysAgo(91) }),
      await addLink({ createdAt: daysAgo(0.5) }),
    ]
    const before = await kept()
    await clearRunOut.run({ now: testNow, signal: never })
    expect(await there(ids)).toEqual([false, true, false, true, false, true, false, true])
    expect(await kept()).toEqual(before)
    expect(valueOf(await listWaiting.call(bakery.owner.caller, {}))).toBeTruthy()
  })

  it('takes shifts at tablets and codes that nobody typed alike, and leaves the tablets', async () => {
    const place = await makeBakery('Old tablets')
    const code = async (name: string, now: Date) =>
      valueOf(await makeStation.call(callerOf(place.owner.sessionSecret, now), { name })).stationId
    const [old, young] = [await enrolledStation(place, 'Bench'), await enrolledStation(place, 'Oven')]
    const waiting = [await code('Old code', testNow), await code('Young code', testNow)]
    await givePin(place.early)
    const tokens = [await tokenAt(old, place.early), await tokenAt(young, place.early)]
    for (const [station, days] of [
      [old, 91],
      [young, 1],
    ] as const)
      await db().stationShift.updateMany({
        where: { stationId: station.stationId },
        data: { beganAt: daysAgo(days + 0.1), lastSeenAt: daysAgo(days + 0.1), endsAt: daysAgo(days) },
      })
    await db().station.update({
      where: { bakeryId_id: { bakeryId: place.bakeryId, id: waiting[0]! } },
      data: { madeAt: daysAgo(92), codeEndsAt: daysAgo(91) },
    })
    await clearRunOut.run({ now: testNow, signal: never })
    expect(await db().stationShift.count({ where: { bakeryId: place.bakeryId } })).toBe(1)
    const hashes = [...tokens.map((token) => hashSecret('station-shift', token))]
    const left = await db().signInPointer.findMany({ where: { bakeryId: place.bakeryId } })
    expect(hashes.map((hash) => left.some((pointer) => pointer.hash === hash))).toEqual([false, true])
    const codes = left.filter(({ kind }) => kind === 'station_code').map(({ targetId }) => targetId)
    expect(codes).toEqual([waiting[1]])
    expect(await db().station.count({ where: { bakeryId: place.bakeryId } })).toBe(4)
    expect(left.filter(({ kind }) => kind === 'station')).toHaveLength(2)
  })

  it('forgets wrong tries after a day and known addresses after thirty', async () => {
    const add = async (failures: number, lastAt: Date) => {
      const keyHash = hashSecret('limit', uuid())
      await db().signInLimit.create({ data: { keyHash, failures, lastAt } })
      return keyHash
    }
    const keys = [
      await add(3, daysAgo(1.1)),
      await add(3, daysAgo(0.9)),
      await add(0, daysAgo(31)),
      await add(0, daysAgo(29)),
    ]
    await clearRunOut.run({ now: testNow, signal: never })
    const left = await db().signInLimit.findMany({ select: { keyHash: true } })
    expect(keys.map((key) => left.some(({ keyHash }) => keyHash === key))).toEqual([false, true, false, true])
  })

  it('comes to the same when it is cut off in the middle and run again', async () => {
    await connected(database.superUrl, (admin) =>
      admin.query(
        `WITH added AS (
           INSERT INTO session (bakery_id, id, person_id, opened_at, last_seen_at, ends_at, device)
           SELECT $1, gen_random_uuid(), $2, $3, $3, $3::timestamptz + interval '12 hours', 'test' FROM generate_series(1, 1200) RETURNING bakery_id, id)
         INSERT INTO sign_in_pointer (hash, kind, bakery_id, target_id) SELECT encode(sha256(id::text::bytea), 'hex'), 'session', bakery_id, id FROM added`,
        [bakery.bakeryId, bakery.late.personId, daysAgo(100)],
      ),
    )
    const count = () =>
      Promise.all([
        db().session.count({ where: { openedAt: daysAgo(100) } }),
        db().signInPointer.count({ where: { kind: 'session', bakeryId: bakery.bakeryId } }),
      ])
    const [, pointersBefore] = await count()
    let steps = 0
    const cutOff = Object.assign(new AbortController().signal, {
      throwIfAborted() {
        if (++steps === 3) throw new Error('cut off')
      },
    })
    await expect(clearRunOut.run({ now: testNow, signal: cutOff })).rejects.toThrow('cut off')
    const [left, pointers] = await count()
    expect(left).toBe(200)
    expect(pointersBefore - pointers).toBe(1000)
    for (let again = 0; again < 2; again++) {
      await clearRunOut.run({ now: testNow, signal: never })
      expect(await count()).toEqual([0, pointersBefore - 1200])
    }
  })
})

describe('checking the records', () => {
  const waiting = async (who: TestBakery['owner']) => valueOf(await listWaiting.call(who.caller, {})).brokenRecord

  it('keeps how each bakery’s was found, and says a broken one to those who may read it, and to nobody next door', async () => {
    for (const each of [bakery, neighbour]) refusalOf(await listJobs.call(each.early.caller, {}))
    await checkRecords.run({ now: testNow, signal: never })
    expect(valueOf(await listJobs.call(bakery.head.caller, {})).lastCheck).toEqual({ at: testNow, fault: null })
    expect(await waiting(bakery.owner)).toBeNull()

    // Past the triggers, as somebody with the owner's password might.
    await connected(database.superUrl, async (admin) => {
      await admin.query('SET session_replication_role = replica')
      await admin.query(
        `UPDATE audit_entry SET entry_text = replace(entry_text, 'list-jobs', 'something') WHERE bakery_id = $1 AND number = 1`,
        [bakery.bakeryId],
      )
    })
    expect(await waiting(bakery.owner)).toBeNull()
    await checkRecords.run({ now: later(dayMs), signal: never })
    const broken = { at: later(dayMs), number: 1, why: 'altered' }
    expect([await waiting(bakery.owner), await waiting(bakery.head), await waiting(bakery.early)]).toEqual([
      broken,
      broken,
      null,
    ])
    expect(await waiting(neighbour.owner)).toBeNull()
    expect(valueOf(await listJobs.call(neighbour.owner.caller, {})).lastCheck).toEqual({
      at: later(dayMs),
      fault: null,
    })
    expect(valueOf(await listJobs.call(bakery.owner.caller, {})).lastCheck).toEqual({
      at: later(dayMs),
      fault: { number: 1, isUnknownFormat: false },
    })
  })

  it('writes nothing to the record, and comes to the same when it is cut off and run again', async () => {
    const entries = () => db().auditEntry.count()
    const before = await entries()
    const found = () => db().recordCheck.findMany({ orderBy: { bakeryId: 'asc' } })
    await checkRecords.run({ now: later(2 * dayMs), signal: never })
    const whole = await found()
    await db().recordCheck.deleteMany()
    let steps = 0
    const cutOff = Object.assign(new AbortController().signal, {
      throwIfAborted() {
        if (++steps === 2) throw new Error('cut off')
      },
    })
    await expect(checkRecords.run({ now: later(2 * dayMs), signal: cutOff })).rejects.toThrow('cut off')
    expect(await found()).toHaveLength(1)
    await checkRecords.run({ now: later(2 * dayMs), signal: never })
    expect(await found()).toEqual(whole)
    expect(await entries()).toBe(before)
  })

  it('is shown with the other jobs: when each began, ended, and how', async () => {
    expect(valueOf(await listJobs.call(bakery.owner.caller, {})).jobs).toEqual([
      { name: 'clear-run-out', run: null },
      { name: 'check-records', run: null },
      { name: 'anchor-records', run: null },
    ])
    await run([clearRunOut, checkRecords])
    const done = { beganAt: testNow, endedAt: testNow, how: 'done' }
    expect(valueOf(await listJobs.call(bakery.owner.caller, {})).jobs).toEqual([
      { name: 'clear-run-out', run: done },
      { name: 'check-records', run: done },
      { name: 'anchor-records', run: null },
    ])
    await db().jobRun.update({ where: { name: 'clear-run-out' }, data: { endedAt: null, outcome: null } })
    expect(valueOf(await listJobs.call(bakery.owner.caller, {})).jobs[0]?.run).toEqual({
      beganAt: testNow,
      endedAt: null,
      how: 'under-way',
    })
  })
})
