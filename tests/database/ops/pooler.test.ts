import { afterEach, beforeEach, describe, expect, inject, it } from 'vitest'
import { closeDb, db } from '@/lib/db/client'
import { appRole, ownerRole } from '@/lib/db/embedded/roles'
import { getTeam } from '@/lib/kitchen/people/get-team'
import { mustLeadToDatabase } from '@/lib/ops/must-lead-to-database'
import { openDatabase } from '@/lib/ops/open-database'
import { readSettings } from '@/lib/ops/settings'
import { makeBakery, valueOf } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'
import { findPooler, startPooler, type Pooler } from '../../support/start-pooler'

const program = findPooler()
const noSecrets = { superuserPassword: '', ownerPassword: '', appPassword: '', authSecret: '' }

// Skipped where it is not installed: PgBouncer is a package of the system (Debian: pgbouncer).
describe.skipIf(program === undefined)('behind PgBouncer', () => {
  let database: FreshDatabase
  let pooler: Pooler | undefined

  async function throughPooler(
    from: 'template' | 'nothing',
    settings: Record<string, string>,
  ): Promise<{ DATABASE_URL: string; OWNER_DATABASE_URL: string }> {
    database = await freshDatabase(from)
    const { port, appPassword, ownerPassword } = inject('testServer')
    pooler = await startPooler(
      program!,
      { port, users: { [appRole]: appPassword, [ownerRole]: ownerPassword } },
      settings,
    )
    const through = (url: string) => Object.assign(new URL(url), { port: String(pooler!.port) }).href
    const urls = { DATABASE_URL: through(database.appUrl), OWNER_DATABASE_URL: through(database.ownerUrl) }
    process.env.DATABASE_URL = urls.DATABASE_URL
    return urls
  }

  beforeEach(() => (pooler = undefined))
  afterEach(async () => {
    await closeDb()
    await pooler?.stop()
    await database.drop()
  })

  it.each<[string, Record<string, string>]>([
    ['as it is by default', {}],
    ['that gives sessions on as they were left', { server_reset_query: '' }],
  ])('in session mode, %s, it starts, keeps what a command does, and reads it', async (_, settings) => {
    const urls = await throughPooler('nothing', { pool_mode: 'session', ...settings })
    const opened = await openDatabase(readSettings({ ...process.env, ...urls }, '/nowhere'), noSecrets)
    expect(opened.appUrl).toBe(urls.DATABASE_URL)
    const bakery = await makeBakery()
    // Twice over new connections of the app to the same ones of the pooler, with the same reads prepared in both.
    for (const _time of [1, 2]) {
      expect(valueOf(await getTeam.call(bakery.owner.caller, {})).people.rows.length).toBeGreaterThan(0)
      const zone = await db().$queryRaw`SELECT current_setting('timezone') AS zone`
      expect(zone).toEqual([{ zone: 'UTC' }])
      await closeDb()
    }
    await opened.stop()
  })

  it.each<[string, RegExp]>([
    [
      'transaction',
      /^DATABASE_URL leads through a pooler in transaction mode, which mixes sessions up\. Set the pooler to session mode \(PgBouncer: pool_mode = session\), or give the address of PostgreSQL itself\.$/,
    ],
    ['statement', /^DATABASE_URL does not lead .*transaction blocks not allowed in statement pooling mode\. Check .*$/],
  ])('in %s mode it is refused in one line', async (mode, line) => {
    const urls = await throughPooler('template', { pool_mode: mode })
    const fault = await mustLeadToDatabase('DATABASE_URL', urls.DATABASE_URL).then(
      () => 'none',
      (error: unknown) => (error as Error).message,
    )
    expect(fault).toMatch(line)
  })
})
