import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { embeddedUrl, makeRolesAndDatabase, ownerRole } from '../db/embedded/roles'
import { startEmbeddedServer } from '../db/embedded/server'
import { differenceFromSchema, migrate } from '../db/migrate'

/**
 * `npm run new-migration -- what-it-does`: writes the migration that brings a migrated database to schema.prisma.
 * Checks, triggers and partial indexes are added to the file by hand before it is committed.
 */
export async function newMigration(name: string | undefined): Promise<void> {
  if (!name || !/^[a-z0-9-]{3,60}$/.test(name))
    throw new Error('Name the migration in lower case with hyphens: npm run new-migration -- add-ovens')
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evendough-migration-'))
  fs.chmodSync(folder, 0o755)
  const password = 'only-for-this-scratch-server'
  const server = await startEmbeddedServer(folder, password)
  try {
    await makeRolesAndDatabase(server.port, 'scratch', {
      superuserPassword: password,
      ownerPassword: password,
      appPassword: password,
    })
    const url = embeddedUrl(server.port, 'scratch', ownerRole, password)
    await migrate(url)
    const sql = await differenceFromSchema(url)
    if (sql.startsWith('-- This is an empty migration')) {
      console.log('The migrations already make the schema as it is written.')
      return
    }
    const stamp = new Date().toISOString().replace(/\D/g, '').slice(0, 14)
    const target = path.resolve(
      import.meta.dirname,
      '..',
      '..',
      'prisma',
      'migrations',
      `${stamp}_${name.replaceAll('-', '_')}`,
    )
    fs.mkdirSync(target, { recursive: true })
    fs.writeFileSync(path.join(target, 'migration.sql'), `${sql}\n`)
    console.log(`Written: ${path.relative(process.cwd(), target)}/migration.sql`)
  } finally {
    await server.stop()
    for (const place of [folder, server.movedTo]) if (place) fs.rmSync(place, { recursive: true, force: true })
  }
}
