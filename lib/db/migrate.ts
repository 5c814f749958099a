import fs from 'node:fs'
import path from 'node:path'
import {
  bindMigrationAwareSqlAdapterFactory,
  type SqlMigrationAwareDriverAdapterFactory,
} from '@prisma/driver-adapter-utils'
import pg from 'pg'
import { grantRights } from './grants'
import { migrationAdapter } from './migration-adapter'
import { loadSchemaEngine } from './schema-engine'

const prismaFolder = path.resolve(import.meta.dirname, '..', '..', 'prisma')
const noFilters = { externalTables: [], externalEnums: [] }
// Any fixed number: the name of the lock under which one process at a time migrates.
const migrationLock = 727_274_001

/**
 * Applies the migrations that are missing, in order, and grants the app's role its rights again.
 * Two processes that start at once take turns.
 * @param ownerUrl connection of the role that owns the tables
 * @param appRole role of the app, when it is another one
 * @returns names of the migrations applied
 */
export async function migrate(ownerUrl: string, appRole?: string): Promise<string[]> {
  const client = new pg.Client({ connectionString: ownerUrl })
  const adapter = migrationAdapter(ownerUrl)
  await client.connect()
  try {
    await client.query('SELECT pg_advisory_lock($1)', [migrationLock])
    const engine = await openEngine(adapter)
    const { appliedMigrationNames } = await engine.applyMigrations({
      migrationsList: readMigrations(),
      filters: noFilters,
    })
    if (appRole) await grantRights(client, appRole)
    return appliedMigrationNames
  } finally {
    await adapter.close()
    await client.end()
  }
}

/** The SQL that would bring a database to the schema as it is written now; empty when they agree. */
export async function differenceFromSchema(url: string): Promise<string> {
  const adapter = migrationAdapter(url)
  const engine = await openEngine(adapter)
  try {
    const { stdout } = await engine.diff({
      from: { tag: 'schemaDatasource', files: [readSchema()], configDir: prismaFolder },
      to: { tag: 'schemaDatamodel', files: [readSchema()] },
      script: true,
      exitCode: null,
      filters: noFilters,
    })
    return (stdout ?? '').trim()
  } finally {
    await adapter.close()
  }
}

async function openEngine(factory: SqlMigrationAwareDriverAdapterFactory) {
  const SchemaEngine = await loadSchemaEngine()
  const adapter = bindMigrationAwareSqlAdapterFactory(factory)
  const schema = readSchema()
  return SchemaEngine.new({ datamodels: [[schema.path, schema.content]] }, () => undefined, adapter)
}

function readSchema(): { path: string; content: string } {
  const file = path.join(prismaFolder, 'schema.prisma')
  return { path: file, content: fs.readFileSync(file, 'utf8') }
}

function readMigrations() {
  const baseDir = path.join(prismaFolder, 'migrations')
  const folders = fs.existsSync(baseDir)
    ? fs.readdirSync(baseDir, { withFileTypes: true }).filter((entry) => entry.isDirectory())
    : []
  return {
    baseDir,
    lockfile: { path: 'migration_lock.toml', content: readIfThere(path.join(baseDir, 'migration_lock.toml')) },
    shadowDbInitScript: '',
    migrationDirectories: folders
      .map((entry) => entry.name)
      .sort()
      .map((name) => ({
        path: name,
        migrationFile: {
          path: 'migration.sql',
          content: { tag: 'ok' as const, value: fs.readFileSync(path.join(baseDir, name, 'migration.sql'), 'utf8') },
        },
      })),
  }
}

function readIfThere(file: string): string | null {
  return fs.existsSync(file) ? fs.readFileSync(file, 'utf8') : null
}
