import { randomBytes } from 'node:crypto'
import pg from 'pg'
import { inject } from 'vitest'
import { closeDb } from '../../lib/db/client'
import { appRole, embeddedUrl, ownerRole } from '../../lib/db/embedded/roles'
import type {} from './database-server'

export type FreshDatabase = {
  name: string
  /** The app's own role, as in production: owns nothing. */
  appUrl: string
  /** The role that owns the tables and migrates. */
  ownerUrl: string
  /** PostgreSQL's superuser, for looking into things. */
  superUrl: string
  /** Closes this process's client and removes the database. */
  drop(): Promise<void>
}

/**
 * A migrated database of the caller's own, made in about a tenth of a second, and the app's settings pointed at it.
 * @param from 'template': migrated, with grants; 'nothing': an empty database of the owner's role
 */
export async function freshDatabase(from: 'template' | 'nothing' = 'template'): Promise<FreshDatabase> {
  const server = inject('testServer')
  const name = `test_${randomBytes(8).toString('hex')}`
  await asAdmin(async (admin) => {
    await admin.query(
      `CREATE DATABASE ${name} OWNER ${ownerRole} TEMPLATE ${from === 'template' ? server.template : 'template0'}`,
    )
    // Rights on a database are not copied with it; these are the same as in lib/db/embedded/roles.ts.
    await admin.query(`REVOKE ALL ON DATABASE ${name} FROM PUBLIC`)
    await admin.query(`GRANT CONNECT ON DATABASE ${name} TO ${appRole}`)
  })
  const appUrl = embeddedUrl(server.port, name, appRole, server.appPassword)
  process.env.DATABASE_URL = appUrl
  return {
    name,
    appUrl,
    ownerUrl: embeddedUrl(server.port, name, ownerRole, server.ownerPassword),
    superUrl: embeddedUrl(server.port, name, 'postgres', server.superuserPassword),
    async drop() {
      await closeDb()
      delete process.env.DATABASE_URL
      await asAdmin((admin) => admin.query(`DROP DATABASE IF EXISTS ${name} WITH (FORCE)`))
    },
  }
}

/** Does the work over a connection of its own, which is closed afterwards. */
export async function connected<T>(url: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
  const client = new pg.Client({ connectionString: url })
  await client.connect()
  try {
    return await work(client)
  } finally {
    await client.end()
  }
}

function asAdmin<T>(work: (admin: pg.Client) => Promise<T>): Promise<T> {
  const { port, superuserPassword } = inject('testServer')
  return connected(embeddedUrl(port, 'postgres', 'postgres', superuserPassword), work)
}
