import { spawnSync } from 'node:child_process'
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll, beforeAll, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { changeSettings } from '@/lib/kitchen/people/change-settings'
import { getSettings } from '@/lib/kitchen/people/get-settings'
import { makeBakery, refusalOf, valueOf, type TestBakery } from '../../support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'

/** A file system of 2 MB, on which the record's table is put; null where nobody may make one. */
function makeSmallDisk(): string | null {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evendough-small-disk-'))
  if (process.getuid?.() === 0 && spawnSync('mount', ['-t', 'tmpfs', '-o', 'size=2m', 'tmpfs', folder]).status === 0)
    return folder
  fs.rmSync(folder, { recursive: true })
  return null
}

const disk = makeSmallDisk()
const tablespace = `small_${process.pid}`
let database: FreshDatabase
let bakery: TestBakery

beforeAll(async () => {
  if (disk === null) return
  database = await freshDatabase()
  bakery = await makeBakery()
  await connected(database.superUrl, async (admin) => {
    const { rows } = await admin.query<{ data_directory: string }>('SHOW data_directory')
    const { uid, gid } = fs.statSync(rows[0]!.data_directory)
    fs.chownSync(disk, uid, gid)
    await admin.query(`CREATE TABLESPACE ${tablespace} LOCATION '${disk}'`)
    await admin.query(`ALTER TABLE audit_entry SET TABLESPACE ${tablespace}`)
  })
})

afterAll(async () => {
  if (disk === null) return
  const { superUrl } = database
  const maintenance = superUrl.replace(database.name, 'postgres')
  await database.drop()
  await connected(maintenance, (admin) => admin.query(`DROP TABLESPACE ${tablespace}`))
  spawnSync('umount', [disk])
  fs.rmSync(disk, { recursive: true, force: true })
})

it.skipIf(disk === null)(
  'a full disk is refused in words, keeps nothing, and ends when there is room (skipped where no small file system can be made)',
  async () => {
    const rename = async (bakeryName: string) => {
      const { name: _, revision: seenRevision, ...settings } = valueOf(await getSettings.call(bakery.owner.caller, {}))
      return changeSettings.call(bakery.owner.caller, { ...settings, bakeryName, seenRevision })
    }
    valueOf(await rename('There is room'))
    await connected(database.superUrl, async (admin) => {
      await admin.query(`CREATE TABLE filling (text text) TABLESPACE ${tablespace}`)
      await admin.query('ALTER TABLE filling ALTER COLUMN text SET STORAGE EXTERNAL')
      const fill = (size: number) => admin.query('INSERT INTO filling SELECT repeat(md5(random()::text), $1)', [size])
      for (const size of [3000, 200, 1])
        for (let full = false; !full; )
          await fill(size).catch((error: unknown) => (full = (error as { code?: string }).code === '53100'))
    })
    const entries = () => db().auditEntry.count({ where: { bakeryId: bakery.bakeryId } })
    // What is left on the last page of the record takes an entry or two, then there is no room.
    let refused = ''
    for (let number = 0; number < 200 && refused === ''; number++) {
      const answer = await rename(`No room ${number}`)
      if (!answer.ok) refused = refusalOf(answer)
    }
    expect(refused).toBe('away')
    const nameThen = (await db().bakery.findFirstOrThrow({ select: { name: true } })).name
    const kept = await entries()
    expect(refusalOf(await rename('Still none'))).toBe('away')
    expect([await entries(), (await db().bakery.findFirstOrThrow({ select: { name: true } })).name]).toEqual([
      kept,
      nameThen,
    ])
    await connected(database.superUrl, (admin) => admin.query('DROP TABLE filling'))
    valueOf(await rename('Room again'))
    expect((await db().bakery.findFirstOrThrow({ select: { name: true } })).name).toBe('Room again')
  },
)
