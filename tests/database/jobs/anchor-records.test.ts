import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll, afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest'
import { appendAudit, chainStart } from '@/lib/db/append-audit'
import { db } from '@/lib/db/client'
import { inTransaction } from '@/lib/db/transaction'
import { compareAnchors } from '@/lib/kitchen/audit/compare-anchors'
import { verifyRecord } from '@/lib/kitchen/audit/verify-record'
import { listWaiting } from '@/lib/kitchen/desk/list-waiting'
import { anchorRecords } from '@/lib/kitchen/jobs/anchor-records'
import { runDueJobs } from '@/lib/kitchen/jobs/run-due-jobs'
import { makeBakery, refusalOf, testNow, valueOf, type TestBakery } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'

const dayMs = 24 * 60 * 60_000
const never = new AbortController().signal
const onDay = (day: number) => new Date(testNow.getTime() + day * dayMs)

let database: FreshDatabase
let folder: string
let file: string
let bakery: TestBakery
let neighbour: TestBakery

beforeAll(async () => {
  database = await freshDatabase()
})
afterAll(() => database.drop())
beforeEach(async () => {
  folder = fs.mkdtempSync(path.join(os.tmpdir(), 'anchors-'))
  file = path.join(folder, 'anchors.jsonl')
  process.env.EVENDOUGH_ANCHORS = file
  await db().jobRun.deleteMany()
  bakery = await makeBakery('Mill Row')
  neighbour = await makeBakery('Next Door')
  for (const each of [bakery, neighbour]) await write(each, 'first', 'second')
})
afterEach(() => {
  delete process.env.EVENDOUGH_ANCHORS
  fs.rmSync(folder, { recursive: true })
})

const write = async ({ bakeryId }: TestBakery, ...actions: string[]) => {
  for (const action of actions)
    await inTransaction((tx) => appendAudit(tx, bakeryId, testNow, null, 'test', { action }))
}
/** As the database's owner can: every entry follows from the one before it, and none is what it was. */
const writeAnew = async (who: TestBakery, ...actions: string[]) => {
  await connected(database.ownerUrl, (owner) =>
    owner.query(
      `ALTER TABLE audit_entry DISABLE TRIGGER USER; DELETE FROM audit_entry WHERE bakery_id = '${who.bakeryId}';
       UPDATE audit_head SET number = 0, hash = '${chainStart}' WHERE bakery_id = '${who.bakeryId}';
       ALTER TABLE audit_entry ENABLE TRIGGER USER`,
    ),
  )
  await write(who, ...actions)
}
const run = (now: Date) => runDueJobs({ jobs: [anchorRecords], now: () => now, signal: never })
const lines = () => fs.readFileSync(file, 'utf8').split('\n').slice(0, -1)
const linesOf = ({ bakeryId }: TestBakery) =>
  lines()
    .map((line) => JSON.parse(line) as Record<string, unknown>)
    .filter((line) => line.bakery === bakeryId)
const headOf = ({ bakeryId }: TestBakery) => db().auditHead.findUniqueOrThrow({ where: { bakeryId } })
const compared = async ({ owner }: TestBakery) => valueOf(await compareAnchors.call(owner.caller, {}))
const notAnchored = async (who: TestBakery['owner']) => valueOf(await listWaiting.call(who.caller, {})).notAnchored

describe('the file that says where the records stand', () => {
  it('gets one line a bakery and day, with the number and hash of its last entry', async () => {
    await run(testNow)
    const { number, hash } = await headOf(bakery)
    expect(linesOf(bakery)).toEqual([
      { bakery: bakery.bakeryId, at: testNow.toISOString(), number: Number(number), hash },
    ])
    expect(linesOf(neighbour)).toHaveLength(1)
    const before = lines()
    await write(bakery, 'third')
    await anchorRecords.run({ now: new Date(testNow.getTime() + 60_000), signal: never })
    expect(lines()).toEqual(before)
    await run(onDay(1))
    expect(lines().slice(0, before.length)).toEqual(before)
    expect(linesOf(bakery).map((line) => line.number)).toEqual([Number(number), Number(number) + 1])
  })

  it('gets it once where two processes are at it, and after one that was cut off', async () => {
    await Promise.all([run(testNow), run(testNow), run(testNow)])
    expect(linesOf(bakery)).toHaveLength(1)
    await db().jobRun.updateMany({ data: { endedAt: null, outcome: null } })
    await run(testNow)
    expect(linesOf(bakery)).toHaveLength(1)
  })

  it('is nothing that the install needs: without its name nothing is written', async () => {
    delete process.env.EVENDOUGH_ANCHORS
    await run(testNow)
    expect(fs.existsSync(file)).toBe(false)
    expect(await compared(bakery)).toMatchObject({ outcome: 'not-kept' })
    expect(await notAnchored(bakery.owner)).toBeNull()
  })

  it('is said to whoever may read the record when it cannot be written, until it can', async () => {
    fs.mkdirSync(file)
    await run(testNow)
    expect([await notAnchored(bakery.owner), await notAnchored(bakery.early)]).toEqual([{ at: testNow }, null])
    expect(await compared(bakery)).toMatchObject({ outcome: 'not-readable' })
    fs.rmdirSync(file)
    await run(onDay(1))
    expect(await notAnchored(bakery.owner)).toBeNull()
    expect(linesOf(bakery)).toHaveLength(1)
  })

  it('goes on behind a line that was cut off, which stays as it is and is named', async () => {
    await run(testNow)
    const torn = lines()[0]!.slice(0, 50)
    fs.appendFileSync(file, torn)
    await run(onDay(1))
    const { number } = await headOf(bakery)
    const all = fs.readFileSync(file, 'utf8').split('\n')
    const at = all.indexOf(torn)
    expect(at).toBeGreaterThan(0)
    expect(JSON.parse(all[at + 1]!)).toMatchObject({ at: onDay(1).toISOString() })
    expect(await notAnchored(bakery.owner)).toEqual({ at: onDay(1) })
    expect(await compared(bakery)).toMatchObject({ outcome: 'agree', count: 2, unreadableLine: at + 1 })
    expect(Number(number)).toBeGreaterThan(0)
  })
})

describe('the record held against it', () => {
  it('agrees while it only grows', async () => {
    expect(await compared(bakery)).toEqual({ outcome: 'none', unreadableLine: null })
    for (const day of [0, 1, 2]) {
      await run(onDay(day))
      await write(bakery, `day ${day}`)
    }
    expect(await compared(bakery)).toEqual({
      outcome: 'agree',
      count: 3,
      first: testNow,
      last: onDay(2),
      unreadableLine: null,
    })
  })

  it('names the first note that disagrees with a record that was written anew, where the chain itself is whole', async () => {
    const { number } = await headOf(bakery)
    await run(testNow)
    await write(bakery, 'third')
    await run(onDay(1))
    const actions = (last: number) => Array.from({ length: last }, (_, i) => `other ${i}`)
    await writeAnew(bakery, ...actions(Number(number) + 5))
    expect(valueOf(await verifyRecord.call(bakery.owner.caller, {})).fault).toBeNull()
    expect(await compared(bakery)).toEqual({
      outcome: 'differs',
      number: Number(number),
      at: testNow,
      unreadableLine: null,
    })
    await writeAnew(bakery, ...actions(1))
    expect(await compared(bakery)).toMatchObject({ outcome: 'not-there', number: Number(number) })
    expect(await compared(neighbour)).toMatchObject({ outcome: 'agree', count: 2 })
  })

  it('is for those who may read the record', async () => {
    expect(refusalOf(await compareAnchors.call(bakery.early.caller, {}))).toBe('not-allowed')
    expect(await compared({ ...bakery, owner: bakery.head })).toMatchObject({ outcome: 'none' })
  })
})
