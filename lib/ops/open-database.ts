import pg from 'pg'
import { embeddedUrl, appRole, makeRolesAndDatabase, ownerRole } from '../db/embedded/roles'
import { startEmbeddedServer } from '../db/embedded/server'
import { log } from '../db/log'
import { migrate } from '../db/migrate'
import { mustLeadToDatabase } from './must-lead-to-database'
import type { Secrets } from './secrets'
import type { Settings } from './settings'

export type OpenDatabase = { appUrl: string; stop(): Promise<void> }

/** Opens the install's database, embedded or outside, and brings its tables up to date. @throws Error in one line */
export async function openDatabase(
  settings: Pick<Settings, 'dataFolder' | 'outside'>,
  secrets: Secrets,
): Promise<OpenDatabase> {
  if (!settings.outside) return openEmbedded(settings.dataFolder, secrets)
  const { appUrl, ownerUrl } = settings.outside
  const isOneRole = ownerUrl === appUrl
  const appRole = await mustLeadToDatabase('DATABASE_URL', appUrl)
  if (!isOneRole) {
    await mustLeadToDatabase('OWNER_DATABASE_URL', ownerUrl)
    await mustBeOneDatabase(appUrl, ownerUrl)
  }
  if (isOneRole)
    console.log(
      'One database role for everything: the records that only grow are guarded by triggers alone. OWNER_DATABASE_URL sets a second role.',
    )
  await migrate(ownerUrl, isOneRole ? undefined : appRole).catch((error: unknown) => {
    throw new Error(
      `${isOneRole ? 'DATABASE_URL' : 'OWNER_DATABASE_URL'}: the tables could not be brought up to date: ${lineOf(error)}`,
      { cause: error },
    )
  })
  return { appUrl, stop: async () => undefined }
}

/** Any fixed number: the lock by which the owner's role shows the app's that they are in one database. */
const meetingLock = 727_274_002

/** @throws Error in one line when the two addresses lead to two databases: the app would find no tables in its own */
async function mustBeOneDatabase(appUrl: string, ownerUrl: string): Promise<void> {
  const [owner, app] = [ownerUrl, appUrl].map((connectionString) => new pg.Client({ connectionString })) as [
    pg.Client,
    pg.Client,
  ]
  try {
    await Promise.all([owner.connect(), app.connect()])
    await owner.query('BEGIN')
    await owner.query('SELECT pg_advisory_xact_lock_shared($1)', [meetingLock])
    const { rows } = await app.query<{ free: boolean }>('SELECT pg_try_advisory_xact_lock($1) AS free', [meetingLock])
    if (rows[0]?.free)
      throw new Error('DATABASE_URL and OWNER_DATABASE_URL lead to two databases. Both must name the same one.')
  } finally {
    await Promise.all([owner.end(), app.end()].map((end) => end.catch(() => undefined)))
  }
}

function lineOf(error: unknown): string {
  return (error instanceof Error ? error.message : String(error)).replace(/\s+/g, ' ')
}

/** Of the embedded server's one database. */
export const databaseName = 'evendough'

async function openEmbedded(dataFolder: string, secrets: Secrets): Promise<OpenDatabase> {
  const server = await startEmbeddedServer(dataFolder, secrets.superuserPassword)
  if (server.movedTo)
    console.log(`The database’s own user cannot enter ${dataFolder}, so its files are in ${server.movedTo}.`)
  try {
    await makeRolesAndDatabase(server.port, databaseName, secrets)
    await migrate(embeddedUrl(server.port, databaseName, ownerRole, secrets.ownerPassword), appRole)
  } catch (error) {
    await server.stop()
    throw error
  }
  server.keepUp((event, facts) => log.warn({ event, ...facts }))
  return { appUrl: embeddedAppUrl(server.port, secrets), stop: server.stop }
}

/** Address of an embedded database that runs on a port, for the app's own role. */
export function embeddedAppUrl(port: number, secrets: Secrets): string {
  return embeddedUrl(port, databaseName, appRole, secrets.appPassword)
}
