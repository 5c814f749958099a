import { randomBytes } from 'node:crypto'
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import pg from 'pg'
import type { TestProject } from 'vitest/node'
import { appRole, embeddedUrl, makeRolesAndDatabase, ownerRole } from '../../lib/db/embedded/roles'
import { startEmbeddedServer } from '../../lib/db/embedded/server'
import { lockFolder } from '../../lib/db/folder-lock'
import { migrate } from '../../lib/db/migrate'

/** Where the tests' PostgreSQL is and how each role comes in. */
export type TestServer = {
  port: number
  template: string
  superuserPassword: string
  ownerPassword: string
  appPassword: string
}

declare module 'vitest' {
  export interface ProvidedContext {
    testServer: TestServer
  }
}

const folderStart = 'evendough-tests-'
/** What a folder is called from the moment that it is being removed: nobody takes a lock in it any more. */
const goneStart = 'evendough-gone-'
const template = 'evendough_template'

/** Vitest's global setup: one PostgreSQL for the run, with a migrated template that each test file copies. */
export default async function setup(project: TestProject): Promise<() => Promise<void>> {
  const { server, stop } = await startTestServer()
  project.provide('testServer', server)
  return stop
}

/** Starts a PostgreSQL of its own in a new folder; `stop` leaves nothing of it behind. */
export async function startTestServer(): Promise<{ server: TestServer; stop: () => Promise<void> }> {
  await removeLeftovers()
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), folderStart))
  // As root the server runs as another user, who must be able to enter.
  fs.chmodSync(folder, 0o755)
  const giveBack = await lockFolder(folder)
  if (giveBack === 'taken') throw new Error(`${folder} is new and yet taken`)
  const secret = () => randomBytes(24).toString('base64url')
  const passwords = { superuserPassword: secret(), ownerPassword: secret(), appPassword: secret() }
  const running = await startEmbeddedServer(folder, passwords.superuserPassword)
  const server: TestServer = { port: running.port, template, ...passwords }
  await hurry(server)
  await makeRolesAndDatabase(running.port, template, passwords)
  await migrate(embeddedUrl(running.port, template, ownerRole, passwords.ownerPassword), appRole)
  await sealTemplate(server)
  return {
    server,
    async stop() {
      await running.stop()
      remove(folder, running.movedTo)
      giveBack()
    },
  }
}

/** What a power cut would lose is thrown away anyway: no waiting for the disk. */
async function hurry(server: TestServer): Promise<void> {
  await asAdmin(server, async (admin) => {
    for (const setting of ['fsync', 'synchronous_commit', 'full_page_writes'])
      await admin.query(`ALTER SYSTEM SET ${setting} = off`)
    await admin.query('SELECT pg_reload_conf()')
  })
}

/**
 * Nobody connects to the template from here on. PostgreSQL copies a database that nobody is connected to, and
 * several copies may be made at once, so the workers need no lock among themselves.
 */
async function sealTemplate(server: TestServer): Promise<void> {
  await asAdmin(server, async (admin) => {
    await admin.query(`ALTER DATABASE ${template} WITH ALLOW_CONNECTIONS false`)
    await admin.query('SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = $1', [template])
  })
}

async function asAdmin(server: TestServer, work: (admin: pg.Client) => Promise<void>): Promise<void> {
  const admin = new pg.Client({
    connectionString: embeddedUrl(server.port, 'postgres', 'postgres', server.superuserPassword),
  })
  await admin.connect()
  try {
    await work(admin)
  } finally {
    await admin.end()
  }
}

/** A run that was killed leaves its folder, and perhaps its server, which nobody holds the lock of any more. */
async function removeLeftovers(): Promise<void> {
  for (const name of fs.readdirSync(os.tmpdir())) {
    const folder = path.join(os.tmpdir(), name)
    // Its own run may be at it too, and finds nothing left to do.
    if (name.startsWith(goneStart)) await fs.promises.rm(folder, { recursive: true, force: true }).catch(() => null)
    if (!name.startsWith(folderStart) || !fs.statSync(folder, { throwIfNoEntry: false })?.isDirectory()) continue
    if (isBeingMade(folder)) continue
    // A folder that no lock can be taken in is another user's, or is just being put away by its own run.
    const giveBack = await lockFolder(folder).catch(() => 'taken' as const)
    if (giveBack === 'taken') continue
    // Starting stops the server that was left, and tells where its files are.
    const left = await startEmbeddedServer(folder, 'not asked for').catch(() => undefined)
    await left?.stop()
    remove(folder, left?.movedTo)
    giveBack()
  }
}

/** Between making its folder and taking the lock on it, another run is defenceless for a moment. */
function isBeingMade(folder: string): boolean {
  const youngMs = 60_000
  return !fs.existsSync(path.join(folder, 'postgres')) && Date.now() - fs.statSync(folder).mtimeMs < youngMs
}

/** Renames before it removes: a sweep that found the folder half removed, its lock gone first, would take it. */
function remove(folder: string, movedTo: string | undefined): void {
  if (movedTo) fs.rmSync(movedTo, { recursive: true, force: true })
  const gone = path.join(os.tmpdir(), `${goneStart}${randomBytes(8).toString('hex')}`)
  fs.renameSync(folder, gone)
  fs.rmSync(gone, { recursive: true, force: true })
}
