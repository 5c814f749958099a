import pg from 'pg'
import { v7 as uuid } from 'uuid'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'
import { z } from 'zod'
import { db } from '@/lib/db/client'
import { appendAudit, chainStart } from '@/lib/db/append-audit'
import { entryOfFormat1 } from '@/lib/documents/audit-entry/entry-of-format-1'
import { textOfAuditEntry } from '@/lib/documents/audit-entry/text-of-audit-entry'
import { hashOfText } from '@/lib/documents/hash-of-text'
import { inTransaction } from '@/lib/db/transaction'
import { command } from '@/lib/kitchen/command'
import { findCaller } from '@/lib/kitchen/find-caller'
import { verifyRecord } from '@/lib/kitchen/audit/verify-record'
import { listRecord } from '@/lib/kitchen/audit/list-record'
import { Refusal } from '@/lib/kitchen/refusal'
import { callerOf, makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import formerEntries from '../../fixtures/documents/audit-entry-1.json'
import { freshDatabase, type FreshDatabase } from '../../support/database'

let database: FreshDatabase
let bakery: TestBakery

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery()
})
afterAll(() => database.drop())

/** A command of the test's own: renames the bakery, then does what the test asks. */
function rename(then: (name: string) => void | Promise<void> = () => undefined) {
  return command({
    name: 'test.rename',
    input: z.strictObject({ name: z.string() }),
    right: 'change-settings',
    async run({ tx, actor, input }) {
      await tx.bakery.update({ where: { bakeryId: actor.bakeryId }, data: { name: input.name } })
      await then(input.name)
      return { value: input.name, audit: { target: actor.bakeryId, after: input.name } }
    },
  })
}

const nameNow = async () => (await db().bakery.findUniqueOrThrow({ where: { bakeryId: bakery.bakeryId } })).name
const entries = () => db().auditEntry.count({ where: { bakeryId: bakery.bakeryId, action: 'test.rename' } })

describe('the command wrapper', () => {
  it('keeps the work and exactly one entry of the record, with what it was', async () => {
    valueOf(await rename().call(bakery.owner.caller, { name: 'Kept' }))
    expect(await nameNow()).toBe('Kept')
    const { rows: record } = valueOf(await listRecord.call(bakery.owner.caller, {})).entries
    expect(record[0]).toMatchObject({
      at: testNow,
      said: {
        outcome: 'read',
        action: 'test.rename',
        after: 'Kept',
        who: { kind: 'desk', name: 'Olga', role: 'owner' },
      },
    })
    expect(await entries()).toBe(1)
  })

  it('keeps nothing when the work refuses, or breaks', async () => {
    const before = [await nameNow(), await entries()]
    expect(
      refusalOf(
        await rename(() => {
          throw new Refusal('stale-moved-on')
        }).call(bakery.owner.caller, { name: 'Lost' }),
      ),
    ).toBe('stale-moved-on')
    await expect(
      rename(() => {
        throw new Error('a bug')
      }).call(bakery.owner.caller, { name: 'Lost' }),
    ).rejects.toThrow('a bug')
    expect([await nameNow(), await entries()]).toEqual(before)
  })

  it('looks for its caller itself, whoever a page found for its queries', async () => {
    const { caller: owner } = bakery.owner
    const found = await findCaller(owner, testNow)
    const asOwner = { ...bakery.early.caller, actor: found?.kind === 'desk' ? found : null }
    expect(refusalOf(await rename().call(asOwner, { name: 'Stolen' }))).toBe('not-allowed')
    expect(refusalOf(await rename().call({ ...asOwner, sessionSecret: 'nobody' }, { name: 'Stolen' }))).toBe(
      'not-signed-in',
    )
    // A query takes who was found, and somebody who was looked for and not found is nobody.
    expect(valueOf(await listRecord.call(asOwner, {})).entries.count).toBeGreaterThan(0)
    expect(refusalOf(await listRecord.call({ ...owner, actor: null }, {}))).toBe('not-signed-in')
  })

  it('is looked up, and its use noted, once for all queries of a page', async () => {
    const house = await makeBakery('Once A Page')
    const caller = callerOf(house.owner.sessionSecret, new Date(testNow.getTime() + 90_000))
    const seenAt = async () =>
      (
        await db().session.findFirstOrThrow({ where: { bakeryId: house.bakeryId, personId: house.owner.personId } })
      ).lastSeenAt.getTime() - testNow.getTime()
    const found = await findCaller(caller, caller.now!())
    expect(await seenAt()).toBe(90_000)
    await db().session.updateMany({ where: { bakeryId: house.bakeryId }, data: { lastSeenAt: testNow } })
    const reader = { ...caller, actor: found?.kind === 'desk' ? found : null }
    const askThrice = async () => {
      for (let asked = 0; asked < 3; asked++) valueOf(await listRecord.call(reader, {}))
    }
    await askThrice()
    expect(await seenAt()).toBe(0)
    // Whoever looked again would find the session over.
    await db().session.updateMany({ where: { bakeryId: house.bakeryId }, data: { endedAt: testNow } })
    await askThrice()
    expect(refusalOf(await listRecord.call(caller, {}))).toBe('not-signed-in')
  })

  it('keeps nothing when the record cannot be written', async () => {
    const owner = new pg.Client({ connectionString: database.ownerUrl })
    await owner.connect()
    const before = [await nameNow(), await entries()]
    await owner.query(`ALTER TABLE audit_entry ADD CONSTRAINT full_disk CHECK (action <> 'test.rename') NOT VALID`)
    await expect(rename().call(bakery.owner.caller, { name: 'Lost' })).rejects.toThrow()
    await owner.query('ALTER TABLE audit_entry DROP CONSTRAINT full_disk')
    await owner.end()
    expect([await nameNow(), await entries()]).toEqual(before)
  })

  it('refuses an unknown key, and an object where text belongs, before anything is touched', async () => {
    expect(refusalOf(await rename().call(bakery.owner.caller, { name: 'x', bakeryId: bakery.bakeryId }))).toBe(
      'invalid bakeryId:unknown-field',
    )
    expect(refusalOf(await rename().call(bakery.owner.caller, { name: { set: 'x' } }))).toBe('invalid name:wrong-form')
    expect(refusalOf(await rename().call(bakery.owner.caller, null))).toBe('invalid :missing')
  })

  it('puts a refusal for want of a right into the record', async () => {
    expect(refusalOf(await rename().call(bakery.head.caller, { name: 'x' }))).toBe('not-allowed')
    const { rows: record } = valueOf(await listRecord.call(bakery.owner.caller, {})).entries
    expect(record[0]).toMatchObject({ said: { action: 'refused.right', after: 'test.rename', who: { name: 'Henk' } } })
  })

  it('reads the right again inside the transaction', async () => {
    const owner = new pg.Client({ connectionString: database.ownerUrl })
    await owner.connect()
    // Between the first look and the transaction the person loses the role: `prepare` is where that can happen.
    const late = command({
      name: 'test.late',
      input: z.strictObject({}),
      right: 'change-settings',
      prepare: async ({ actor }) => {
        await owner.query(`UPDATE person SET role = 'shift_baker' WHERE bakery_id = $1 AND id = $2`, [
          actor.bakeryId,
          actor.personId,
        ])
      },
      run: async () => ({ value: null, audit: {} }),
    })
    expect(refusalOf(await late.call(bakery.owner.caller, {}))).toBe('not-allowed')
    await owner.query(`UPDATE person SET role = 'owner' WHERE bakery_id = $1 AND id = $2`, [
      bakery.bakeryId,
      bakery.owner.personId,
    ])
    await owner.end()
  })

  it.each([
    [
      'switched off',
      'UPDATE person SET ended_at = now() WHERE bakery_id = $1 AND id = $2',
      'UPDATE person SET ended_at = NULL WHERE bakery_id = $1 AND id = $2',
    ],
    [
      'given another role',
      `UPDATE person SET role = 'shift_baker' WHERE bakery_id = $1 AND id = $2`,
      `UPDATE person SET role = 'owner' WHERE bakery_id = $1 AND id = $2`,
    ],
    [
      'signed out',
      'UPDATE session SET ended_at = now() WHERE bakery_id = $1 AND person_id = $2',
      'UPDATE session SET ended_at = NULL WHERE bakery_id = $1 AND person_id = $2',
    ],
  ])('keeps nothing of somebody who is %s while they wait for a lock', async (_, revoke, restore) => {
    const [holder, watcher] = [
      new pg.Client({ connectionString: database.ownerUrl }),
      new pg.Client({ connectionString: database.superUrl }),
    ]
    await Promise.all([holder.connect(), watcher.connect()])
    const whose = [bakery.bakeryId, bakery.owner.personId]
    const before = [await nameNow(), await entries()]
    await holder.query('BEGIN')
    // The head of the chain is the last lock that any command waits for.
    await holder.query('SELECT 1 FROM audit_head WHERE bakery_id = $1 FOR UPDATE', [bakery.bakeryId])
    const waiting = rename().call(bakery.owner.caller, { name: 'Too late' })
    const isWaiting = async () =>
      (
        await watcher.query(
          `SELECT 1 FROM pg_stat_activity WHERE datname = $1 AND wait_event_type = 'Lock' AND query LIKE '%append_audit%'`,
          [database.name],
        )
      ).rowCount === 1
    while (!(await isWaiting()));
    await watcher.query(revoke, whose)
    await holder.query('COMMIT')
    expect(refusalOf(await waiting)).toBe('not-signed-in')
    expect([await nameNow(), await entries()]).toEqual(before)
    await watcher.query(restore, whose)
    valueOf(await rename().call(bakery.owner.caller, { name: 'In time' }))
    await Promise.all([holder.end(), watcher.end()])
  })

  it('answers what was kept, whatever goes wrong after the commit', async () => {
    const owner = new pg.Client({ connectionString: database.superUrl })
    await owner.connect()
    await owner.query(
      `ALTER TABLE session ADD CONSTRAINT broken CHECK (last_seen_at < '2026-03-02T04:00:30Z') NOT VALID`,
    )
    const later = callerOf(bakery.owner.sessionSecret, new Date(testNow.getTime() + 90_000))
    expect(valueOf(await rename().call(later, { name: 'Kept all the same' }))).toBe('Kept all the same')
    expect(await nameNow()).toBe('Kept all the same')
    valueOf(await listRecord.call(later, {}))
    await owner.query('ALTER TABLE session DROP CONSTRAINT broken')
    await owner.end()
  })

  it('starts again after a deadlock, and both writers are kept', async () => {
    const other = await makeBakery('Other lock')
    const locks = [bakery.bakeryId, other.bakeryId]
    let waiting = 0
    let release = () => {}
    const bothHold = new Promise<void>((resolve) => (release = resolve))
    const lock = (order: string[], attempts: { count: number }) =>
      inTransaction(async (tx) => {
        attempts.count++
        await tx.$queryRaw`SELECT 1 FROM bakery WHERE bakery_id = ${order[0]}::uuid FOR UPDATE`
        if (++waiting === 2) release()
        if (attempts.count === 1) await bothHold
        await tx.$queryRaw`SELECT 1 FROM bakery WHERE bakery_id = ${order[1]}::uuid FOR UPDATE`
        return true
      })
    const [one, two] = [{ count: 0 }, { count: 0 }]
    expect(await Promise.all([lock(locks, one), lock(locks.toReversed(), two)])).toEqual([true, true])
    expect(one.count + two.count).toBe(3)
  })

  it('goes on by itself after its connection was cut, and says that the book is away when it is cut each time', async () => {
    const admin = new pg.Client({ connectionString: database.superUrl })
    await admin.connect()
    const cut = async () => {
      await admin.query(
        `SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = $1 AND application_name = 'evendough'`,
        [database.name],
      )
    }
    const before = await entries()
    expect(refusalOf(await rename(cut).call(bakery.owner.caller, { name: 'Cut each time' }))).toBe('away')
    let cuts = 0
    valueOf(
      await rename(async () => {
        if (cuts++ === 0) await cut()
      }).call(bakery.owner.caller, { name: 'Cut once' }),
    )
    await cut()
    valueOf(await listRecord.call(bakery.owner.caller, {}))
    expect(await nameNow()).toBe('Cut once')
    expect(await entries()).toBe(before + 1)
    await admin.end()
  })
})

describe('the record of a bakery', () => {
  it('is whole after many writers at once, with every entry there once', async () => {
    const before = await db().auditEntry.count({ where: { bakeryId: bakery.bakeryId } })
    const results = await Promise.all(
      Array.from({ length: 30 }, (_, at) => rename().call(bakery.owner.caller, { name: `Writer ${at}` })),
    )
    expect(results.filter((result) => result.ok)).toHaveLength(30)
    expect(await db().auditEntry.count({ where: { bakeryId: bakery.bakeryId } })).toBe(before + 30)
    expect(valueOf(await verifyRecord.call(bakery.owner.caller, {})).fault).toBeNull()
  })

  it('puts place and former hash into the text as the code would, whatever stands in it', async () => {
    const odd = await makeBakery('Odd Words')
    const reasons = ['"number":"1","previous":"' + '0'.repeat(64) + '"', 'Brötchen 🥐 \u0000 \\ "', '{}', "'; --"]
    for (const reason of reasons)
      expect(
        await inTransaction((tx) =>
          appendAudit(tx, odd.bakeryId, testNow, null, 'test', { action: 'noted', reason, after: [reason] }),
        ),
      ).toBe(true)
    const kept = await db().auditEntry.findMany({ where: { bakeryId: odd.bakeryId }, orderBy: { number: 'asc' } })
    expect(kept.map(({ number }) => number)).toEqual([1n, 2n, 3n, 4n])
    for (const [at, entry] of kept.entries())
      expect(entry).toMatchObject({
        entryText: textOfAuditEntry({
          bakery: odd.bakeryId,
          number: String(at + 1),
          at: testNow.toISOString(),
          who: null,
          address: 'test',
          action: 'noted',
          target: null,
          before: null,
          after: [reasons[at]!],
          reason: reasons[at]!,
          previous: at === 0 ? chainStart : kept[at - 1]!.hash,
        }).text,
        hash: hashOfText(entry.entryText),
      })
    expect(valueOf(await verifyRecord.call(odd.owner.caller, {})).fault).toBeNull()
  })

  it('takes nothing of who is not there any more, and nothing for a bakery that has none', async () => {
    const place = await makeBakery('Gone Meanwhile')
    const still = { kind: 'desk', sessionId: uuid(), personId: place.owner.personId, role: 'owner' } as const
    const note = (bakeryId: string) =>
      inTransaction((tx) => appendAudit(tx, bakeryId, testNow, null, 'test', { action: 'noted' }, still))
    expect(await note(place.bakeryId)).toBe(false)
    expect(await db().auditEntry.count({ where: { bakeryId: place.bakeryId } })).toBe(0)
    await expect(note(uuid())).rejects.toThrow('has no audit chain')
  })

  it('shows an edit, a removal and a cut tail that were made past the guards', async () => {
    const watched = await makeBakery('Watched')
    for (let at = 0; at < 5; at++)
      await inTransaction((tx) => appendAudit(tx, watched.bakeryId, testNow, null, 'test', { action: `step ${at}` }))
    const owner = new pg.Client({ connectionString: database.ownerUrl })
    await owner.connect()
    const both = async () => {
      const [page, whole] = [
        valueOf(await listRecord.call(watched.owner.caller, {})),
        valueOf(await verifyRecord.call(watched.owner.caller, {})),
      ]
      expect(page.fault).toEqual(whole.fault)
      return whole.fault
    }
    expect(await both()).toBeNull()
    const faultAfter = async (statement: string) => {
      await owner.query('BEGIN')
      await owner.query('ALTER TABLE audit_entry DISABLE TRIGGER USER')
      await owner.query(statement, [watched.bakeryId])
      await owner.query('ALTER TABLE audit_entry ENABLE TRIGGER USER')
      await owner.query('COMMIT')
      return both()
    }
    expect(await faultAfter(`DELETE FROM audit_entry WHERE bakery_id = $1 AND number = 5`)).toEqual({
      number: 5,
      why: 'head',
    })
    expect(
      await faultAfter(
        `UPDATE audit_entry SET entry_text = replace(entry_text, 'step 2', 'step x') WHERE bakery_id = $1 AND number = 3`,
      ),
    ).toEqual({ number: 3, why: 'altered' })
    expect(await faultAfter(`DELETE FROM audit_entry WHERE bakery_id = $1 AND number = 2`)).toEqual({
      number: 2,
      why: 'gap',
    })
    await owner.end()
  })

  it('is followed page by page: a page shows a fault of its own, and only the whole check one further back', async () => {
    const long = await makeBakery('Long Record')
    for (let at = 0; at < 60; at++)
      await inTransaction((tx) => appendAudit(tx, long.bakeryId, testNow, null, 'test', { action: `step ${at}` }))
    const owner = new pg.Client({ connectionString: database.ownerUrl })
    await owner.connect()
    await owner.query('ALTER TABLE audit_entry DISABLE TRIGGER USER')
    await owner.query(
      `UPDATE audit_entry SET entry_text = replace(entry_text, 'step 4', 'step x') WHERE bakery_id = $1 AND number = 5`,
      [long.bakeryId],
    )
    await owner.query('ALTER TABLE audit_entry ENABLE TRIGGER USER')
    await owner.end()
    const newest = valueOf(await listRecord.call(long.owner.caller, {}))
    expect(newest).toMatchObject({ entries: { count: 60 }, fault: null })
    expect(newest.entries.rows.at(-1)?.number).toBe(11)
    expect(valueOf(await listRecord.call(long.owner.caller, { after: newest.entries.after }))).toMatchObject({
      fault: { number: 5, why: 'altered' },
      entries: { count: 60, after: null },
    })
    expect(valueOf(await verifyRecord.call(long.owner.caller, {}))).toEqual({
      entries: 60,
      fault: { number: 5, why: 'altered' },
      anchor: null,
    })
  })

  it('goes on from entries of the former format, which stay as they were and are shown as before', async () => {
    const old = await makeBakery('Old Record')
    const [first] = formerEntries
    const { at, action, target, who } = entryOfFormat1.parse(JSON.parse(first!.text))
    await db().$executeRaw`
      INSERT INTO audit_entry (bakery_id, number, at, by, person_id, action, target_id, entry_text, previous_hash, hash)
      VALUES (${old.bakeryId}::uuid, 1, ${at}::timestamptz, 'desk', ${who!.person}::uuid, ${action}, ${target}::uuid, ${first!.text}, ${'0'.repeat(64)}, ${first!.hash})`
    await db().auditHead.update({ where: { bakeryId: old.bakeryId }, data: { number: 1n, hash: first!.hash } })
    valueOf(await rename().call(old.owner.caller, { name: 'Old Record goes on' }))
    expect(valueOf(await verifyRecord.call(old.owner.caller, {}))).toEqual({ entries: 2, fault: null, anchor: null })
    const { entries: page, fault } = valueOf(await listRecord.call(old.owner.caller, {}))
    expect(fault).toBeNull()
    expect(page.rows.map(({ said }) => said.outcome === 'read' && said.who)).toEqual([
      { kind: 'desk', person: old.owner.personId, name: 'Olga', role: 'owner' },
      { kind: 'desk', ...who },
    ])
  })

  it('is one bakery’s own: a neighbour sees nothing of it', async () => {
    const neighbour = await makeBakery('Next Door')
    expect(valueOf(await listRecord.call(neighbour.owner.caller, {})).entries).toMatchObject({ rows: [], count: 0 })
    expect(refusalOf(await listRecord.call(callerOf('made-up-secret'), {}))).toBe('not-signed-in')
    expect(refusalOf(await listRecord.call(neighbour.early.caller, {}))).toBe('not-allowed')
  })
})
