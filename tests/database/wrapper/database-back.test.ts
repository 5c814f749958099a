import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import pg from 'pg'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { startEmbeddedServer, type EmbeddedServer } from '@/lib/db/embedded/server'
import { lockFolder } from '@/lib/db/folder-lock'

// Of the kind that a later run's clean-up knows.
const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evendough-tests-'))
let server: EmbeddedServer
let giveBack: (() => void) | 'taken'

beforeAll(async () => {
  fs.chmodSync(folder, 0o755)
  giveBack = await lockFolder(folder)
  server = await startEmbeddedServer(folder, 'secret-of-the-test')
})

afterAll(async () => {
  await server.stop()
  for (const made of [folder, server.movedTo]) if (made) fs.rmSync(made, { recursive: true, force: true })
  if (giveBack !== 'taken') giveBack()
})

async function ask(sql: string): Promise<unknown[]> {
  const client = new pg.Client({
    host: '127.0.0.1',
    port: server.port,
    user: 'postgres',
    password: 'secret-of-the-test',
    database: 'postgres',
  })
  client.on('error', () => undefined)
  try {
    await client.connect()
    return (await client.query(sql)).rows
  } finally {
    await client.end().catch(() => undefined)
  }
}

test('a database that was killed is started again on its port, with everything that was committed', async () => {
  await ask('CREATE TABLE kept (number int); INSERT INTO kept VALUES (7)').catch(() => [])
  const events: string[] = []
  server.keepUp((event) => events.push(event))
  const pidFile = path.join(
    server.movedTo ? path.join(server.movedTo, 'postgres') : path.join(folder, 'postgres'),
    'data',
    'postmaster.pid',
  )
  process.kill(Number(fs.readFileSync(pidFile, 'utf8').split('\n')[0]), 'SIGKILL')
  await expect
    .poll(() => ask('SELECT number FROM kept').catch(() => 'away'), { timeout: 25_000 })
    .toEqual([{ number: 7 }])
  expect(events[0]).toBe('database-down')
})
