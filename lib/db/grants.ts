import pg from 'pg'
import { appendOnlyTables } from './append-only'
import { tablesKeptByTriggers } from './kept-by-triggers'

/**
 * Gives the app's role exactly what it needs, after each migration: rows yes, tables no; tables that only grow
 * are read and added to, nothing else; what triggers keep is read.
 */
export async function grantRights(owner: pg.Client, appRole: string): Promise<void> {
  const role = pg.escapeIdentifier(appRole)
  const { rows } = await owner.query<{ name: string }>(
    `SELECT c.relname AS name FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
     WHERE n.nspname = 'public' AND c.relkind IN ('r', 'p')`,
  )
  const statements = [`REVOKE ALL ON SCHEMA public FROM PUBLIC`, `GRANT USAGE ON SCHEMA public TO ${role}`]
  for (const { name } of rows) {
    const table = pg.escapeIdentifier(name)
    statements.push(`REVOKE ALL ON ${table} FROM PUBLIC, ${role}`, `GRANT ${rightsOn(name)} ON ${table} TO ${role}`)
  }
  await owner.query(`BEGIN; ${statements.join('; ')}; COMMIT`)
}

function rightsOn(table: string): string {
  if (table === '_prisma_migrations' || (tablesKeptByTriggers as readonly string[]).includes(table)) return 'SELECT'
  return (appendOnlyTables as readonly string[]).includes(table) ? 'SELECT, INSERT' : 'SELECT, INSERT, UPDATE, DELETE'
}
