import fs from 'node:fs'
import path from 'node:path'
import { appRole, embeddedUrl } from '../../lib/db/embedded/roles'
import { databaseName } from '../../lib/ops/open-database'
import { readOrMakeSecrets } from '../../lib/ops/secrets'

/** Points this process at the database of a start, to draw a tablet up and to look at what is kept. */
export function lookInto(data: string): void {
  const { appPassword, authSecret } = readOrMakeSecrets(data)
  process.env.DATABASE_URL = embeddedUrl(postmasterOf(data).port, databaseName, appRole, appPassword)
  process.env.NEXTAUTH_SECRET = authSecret
}

/** The process of a start's database, and where it listens, as it wrote them down itself. */
export function postmasterOf(data: string): { pid: number; port: number } {
  const lines = fs.readFileSync(path.join(data, 'postgres', 'data', 'postmaster.pid'), 'utf8').split('\n')
  return { pid: Number(lines[0]), port: Number(lines[3]) }
}
