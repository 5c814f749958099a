import fs from 'node:fs'
import path from 'node:path'
import { appRole, embeddedUrl } from '../../lib/db/embedded/roles'
import { databaseName } from '../../lib/ops/open-database'
import { readOrMakeSecrets } from '../../lib/ops/secrets'

/** Points this process at the database of a start, to draw a tablet up and to look at what is kept. */
export function lookInto(data: string): void {
  const { appPassword, authSecret } = readOrMakeSecrets(data)
  const port = Number(fs.readFileSync(path.join(data, 'postgres', 'data', 'postmaster.pid'), 'utf8').split('\n')[3])
  process.env.DATABASE_URL = embeddedUrl(port, databaseName, appRole, appPassword)
  process.env.NEXTAUTH_SECRET = authSecret
}
