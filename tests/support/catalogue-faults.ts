import type pg from 'pg'
import { appRole } from '../../lib/db/embedded/roles'
import { readTables, type ForeignKey, type Table } from './catalogue'

/** What the database is held against: the lists in lib/db. */
export type Lists = {
  withoutBakery: readonly string[]
  appendOnly: readonly string[]
  keptByTriggers: readonly string[]
}

const key = 'bakery_id'
const notOurs = '_prisma_migrations'

/**
 * Everything in a database that breaks the rules which keep bakeries apart and records whole, one line a fault.
 * It looks at PostgreSQL's own catalogue, so it holds whatever wrote the migration.
 */
export async function findCatalogueFaults(client: pg.Client, lists: Lists): Promise<string[]> {
  const tables = await readTables(client)
  const names = tables.map((table) => table.name)
  const listed = [...lists.withoutBakery, ...lists.appendOnly, ...lists.keptByTriggers].filter(
    (name) => !names.includes(name),
  )
  return [
    ...listed.map((name) => `${name}: is in a list but not in the database`),
    ...tables.flatMap((table) =>
      lists.withoutBakery.includes(table.name) ? keyFaultsWithoutBakery(table) : keyFaults(table),
    ),
    ...tables.flatMap((table) => [...foreignKeyFaults(table), ...timeFaults(table)]),
    ...tables.flatMap((table) => growthFaults(table, lists.appendOnly)),
    ...(await rightsFaults(client, [...lists.appendOnly, ...lists.keptByTriggers])),
  ]
}

function keyFaults(table: Table): string[] {
  const faults: string[] = []
  const column = table.columns.find(({ name }) => name === key)
  if (!column)
    return [`${table.name}: has no ${key}; if it holds nothing of a bakery, name it in lib/db/tables-without-bakery.ts`]
  if (column.type !== 'uuid' || !column.required) faults.push(`${table.name}.${key}: must be a uuid and not null`)
  const primary = table.indexes.find((index) => index.primary)
  if (primary?.columns[0] !== key) faults.push(`${table.name}: its primary key must begin with ${key}`)
  // The bakery alone is the key of the bakery itself and of what it has one of: there the key is the way to it.
  const oneEach =
    table.name === 'bakery' || table.foreignKeys.some((one) => one.target === 'bakery' && one.columns.join() === key)
  if (primary?.columns.join() === key && !oneEach)
    faults.push(`${table.name}: the key ${key} alone needs a foreign key to bakery`)
  if (table.name === 'bakery' && primary?.columns.join() !== key)
    faults.push(`bakery: its primary key must be ${key} alone`)
  if (table.name !== 'bakery' && table.foreignKeys.length === 0)
    faults.push(`${table.name}: nothing makes sure that its bakery exists`)
  for (const index of table.indexes) {
    if (index.columns[0] !== key)
      faults.push(`${table.name}: ${index.unique ? 'unique key' : 'index'} ${index.name} must begin with ${key}`)
  }
  for (const one of table.foreignKeys) {
    if (!carriesBakery(one)) faults.push(`${table.name}: foreign key ${one.name} must carry ${key} on both sides`)
  }
  return faults
}

function carriesBakery(one: ForeignKey): boolean {
  const at = one.columns.indexOf(key)
  return at >= 0 && one.targetColumns[at] === key
}

function keyFaultsWithoutBakery(table: Table): string[] {
  const known = ['bakery_id', 'target_id']
  return table.foreignKeys
    .filter((one) => one.columns.some((column) => !known.includes(column)))
    .map((one) => `${table.name}: foreign key ${one.name} holds more of a bakery than a pointer to it`)
}

function foreignKeyFaults(table: Table): string[] {
  return table.foreignKeys.flatMap((one) => {
    const faults: string[] = []
    if (one.onDelete !== 'r') faults.push(`${table.name}: foreign key ${one.name} must be ON DELETE RESTRICT`)
    if (one.onUpdate !== 'a') faults.push(`${table.name}: foreign key ${one.name} must be ON UPDATE NO ACTION`)
    const supported = table.indexes.some((index) => {
      const leading = index.columns.slice(0, one.columns.length)
      return !index.partial && one.columns.every((column) => leading.includes(column))
    })
    if (!supported) faults.push(`${table.name}: no index begins with the columns of foreign key ${one.name}`)
    return faults
  })
}

function timeFaults(table: Table): string[] {
  if (table.name === notOurs) return []
  return table.columns.flatMap((column) => {
    if (!/^(timestamp|timestamptz|time|timetz)$/.test(column.type)) return []
    const faults: string[] = []
    if (column.type !== 'timestamptz' || column.typeLength !== 3)
      faults.push(`${table.name}.${column.name}: must be timestamptz(3)`)
    if (column.hasDefault) faults.push(`${table.name}.${column.name}: the command gives the time, never a default`)
    return faults
  })
}

/** Bits of pg_trigger.tgtype, from PostgreSQL's src/include/catalog/pg_trigger.h. */
const bit = { row: 1, before: 2, delete: 8, update: 16, truncate: 32 } as const

function growthFaults(table: Table, appendOnly: readonly string[]): string[] {
  const guards = table.triggers.filter((one) => one.calls === 'refuse_change')
  if (!appendOnly.includes(table.name)) {
    // A guard against emptying alone is right where only some rows are frozen.
    return guards
      .filter((one) => one.bits & bit.row)
      .map((one) => `${table.name}: trigger ${one.name} says that it only grows, lib/db/append-only.ts does not`)
  }
  const has = (wanted: number, level: 'row' | 'statement') =>
    guards.some((one) => {
      const always = (one.enabled === 'O' || one.enabled === 'A') && !one.narrowed
      const atLevel = Boolean(one.bits & bit.row) === (level === 'row')
      return always && atLevel && Boolean(one.bits & bit.before) && (one.bits & wanted) === wanted
    })
  return [
    ...(has(bit.update, 'row') ? [] : [`${table.name}: only grows, but no row trigger refuses UPDATE`]),
    ...(has(bit.delete, 'row') ? [] : [`${table.name}: only grows, but no row trigger refuses DELETE`]),
    ...(has(bit.truncate, 'statement') ? [] : [`${table.name}: only grows, but no statement trigger refuses TRUNCATE`]),
  ]
}

async function rightsFaults(client: pg.Client, unchanging: readonly string[]): Promise<string[]> {
  const { rows } = await client.query<{ name: string; right: string }>(
    `SELECT c.relname AS name, r.right FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace,
       unnest(ARRAY['TRUNCATE', 'TRIGGER', 'REFERENCES', 'MAINTAIN', 'UPDATE', 'DELETE']) AS r ("right")
     WHERE n.nspname = 'public' AND c.relkind IN ('r', 'p')
       AND CASE WHEN r.right IN ('UPDATE', 'REFERENCES') THEN has_any_column_privilege($1, c.oid, r.right) ELSE has_table_privilege($1, c.oid, r.right) END
     ORDER BY 1, 2`,
    [appRole],
  )
  const rowRights = ['UPDATE', 'DELETE']
  const faults = rows
    .filter(({ name, right }) => !rowRights.includes(right) || unchanging.includes(name) || name === notOurs)
    .map(({ name, right }) => `${name}: the app's role may ${right}`)
  const owned = await client.query<{ count: number }>(
    `SELECT count(*)::int AS count FROM pg_shdepend WHERE refclassid = 'pg_authid'::regclass AND refobjid = $1::regrole AND deptype = 'o'`,
    [appRole],
  )
  if (owned.rows[0]?.count !== 0) faults.push(`the app's role owns something`)
  const role = await client.query(
    `SELECT 1 FROM pg_roles WHERE rolname = $1 AND (rolsuper OR rolcreaterole OR rolcreatedb OR rolreplication OR rolbypassrls)
     UNION ALL SELECT 1 FROM pg_auth_members WHERE member = $1::regrole`,
    [appRole],
  )
  if (role.rowCount !== 0) faults.push(`the app's role has powers, or another role's rights`)
  return faults
}
