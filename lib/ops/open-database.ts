import pg from 'pg'
import { embeddedUrl, appRole, makeRolesAndDatabase, ownerRole } from '../db/embedded/roles'
import { startEmbeddedServer } from '../db/embedded/server'
import { log } from '../db/log'
import { migrate } from '../db/migrate'
import type { Secrets } from './secrets'
import type { Settings } from './settings'

export type OpenDatabase = { appUrl: string; stop(): Promise<void> }

/** Opens the install's database, embedded or outside, and brings its tables up to date. @throws Error in one line */
export async function openDatabase(settings: Settings, secrets: Secrets): Promise<OpenDatabase> {
  if (!settings.outside) return openEmbedded(settings.dataFolder, secrets)
  const { appUrl, ownerUrl } = settings.outside
  await mustConnect(ownerUrl, ownerUrl === appUrl ? 'DATABASE_URL' : 'OWNER_DATABASE_URL')
  if (ownerUrl === appUrl) console.log('One database role for everything: the records that only grow are guarded by triggers alone. OWNER_DATABASE_URL sets a second role.')
  await migrate(ownerUrl, ownerUrl === appUrl ? undefined : decodeURIComponent(new URL(appUrl).username))
  await mustConnect(appUrl, 'DATABASE_URL')
  return { appUrl, stop: async () => undefined }
}

const databaseName = 'evendough'

async function openEmbedded(dataFolder: string, secrets: Secrets): Promise<OpenDatabase> {
  const server = await startEmbeddedServer(dataFolder, secrets.superuserPassword)
  if (server.movedTo) console.log(`The database’s own user cannot enter ${dataFolder}, so its files are in ${server.movedTo}.`)
  try {
    await makeRolesAndDatabase(server.port, databaseName, secrets)
    await migrate(embeddedUrl(server.port, databaseName, ownerRole, secrets.ownerPassword), appRole)
  } catch (error) {
    await server.stop()
    throw error
  }
  server.keepUp((event, facts) => log.warn({ event, ...facts }))
  return { appUrl: embeddedUrl(server.port, databaseName, appRole, secrets.appPassword), stop: server.stop }
}

async function mustConnect(url: string, setting: string): Promise<void> {
  const client = new pg.Client({ connectionString: url, connectionTimeoutMillis: 10_000 })
  try {
    await client.connect()
    await client.query('SELECT 1')
  } catch (error) {
    const { hostname, port, pathname } = new URL(url)
    const why = error instanceof Error && error.message ? error.message : String((error as { code?: unknown }).code)
    throw new Error(`${setting} does not lead to a PostgreSQL database (${hostname}:${port || 5432}${pathname}): ${why}. Check address, name and password.`, { cause: error })
  } finally {
    await client.end().catch(() => undefined)
  }
}
