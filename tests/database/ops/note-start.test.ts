import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll, afterEach, beforeAll, beforeEach, expect, it } from 'vitest'
import { db } from '@/lib/db/client'
import { bookAsOf } from '@/lib/kitchen/stations/book-as-of'
import { noteStart } from '@/lib/ops/note-start'
import { prepareInstall } from '@/lib/ops/prepare-install'
import { freshDatabase, type FreshDatabase } from '@/tests/support/database'

let database: FreshDatabase
let folder: string
let file: string

beforeAll(async () => {
  database = await freshDatabase()
  await prepareInstall('real')
})
afterAll(() => database.drop())
beforeEach(() => {
  folder = fs.mkdtempSync(path.join(os.tmpdir(), 'starts-'))
  file = path.join(folder, 'starts.json')
})
afterEach(() => fs.rmSync(folder, { recursive: true, force: true }))

const putBack = [expect.stringContaining('put back from a copy')]
const epoch = async () => (await db().install.findUniqueOrThrow({ where: { id: 1 } })).epoch
const noted = () => JSON.parse(fs.readFileSync(file, 'utf8')) as { id: string; starts: number }

it('says nothing while database and file count the same, and the book has another word after each start', async () => {
  const first = await epoch()
  const words = new Set<string>()
  for (let starts = 1; starts <= 3; starts++) {
    expect(await noteStart(file, false)).toEqual([])
    expect(noted().starts).toBe(starts)
    words.add(await bookAsOf(db()))
  }
  expect(words.size).toBe(3)
  expect(await epoch()).toBe(first)
  expect(fs.statSync(file).mode & 0o777).toBe(0o600)
})

it('finds a database that was put back from a copy, once, and gives the install another epoch', async () => {
  for (let starts = 0; starts < 3; starts++) await noteStart(file, false)
  const [before, word] = [await epoch(), await bookAsOf(db())]
  await db().startMark.update({ where: { id: noted().id }, data: { starts: 1 } })
  expect(await noteStart(file, false)).toEqual(putBack)
  expect(noted().starts).toBe(4)
  expect(await epoch()).not.toBe(before)
  expect(await bookAsOf(db())).not.toBe(word)
  expect(await noteStart(file, false)).toEqual([])
})

it('finds one from before the file was, and one from another way of the same count', async () => {
  await noteStart(file, false)
  await db().startMark.delete({ where: { id: noted().id } })
  expect(await noteStart(file, false)).toEqual(putBack)
  // The copy is as old as one start ago: its next start has the number that the last one had, under another epoch.
  const word = await bookAsOf(db())
  await db().startMark.update({ where: { id: noted().id }, data: { starts: 1 } })
  await noteStart(file, false)
  expect(await bookAsOf(db())).not.toBe(word)
})

it('takes a start that ended between database and file, and a file that cannot be read, for one that was put back', async () => {
  await noteStart(file, false)
  await db().startMark.update({ where: { id: noted().id }, data: { starts: 2 } })
  expect(await noteStart(file, false)).toEqual(putBack)
  expect(noted().starts).toBe(3)
  fs.writeFileSync(file, '{"id": "half a fi')
  expect(await noteStart(file, false)).toEqual(putBack)
  expect(await noteStart(file, false)).toEqual([])
})

it('takes a file beside a new database for another one’s', async () => {
  await noteStart(file, false)
  const before = noted()
  expect(await noteStart(file, true)).toEqual([])
  expect(noted().id).not.toBe(before.id)
  expect(noted().starts).toBe(1)
})

it('starts all the same where the file cannot be written, and says so', async () => {
  const nowhere = path.join(folder, 'not', 'there', 'starts.json')
  expect(await noteStart(nowhere, false)).toEqual([expect.stringContaining('cannot be written (ENOENT)')])
})
