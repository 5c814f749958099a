import { randomUUID } from 'node:crypto'
import fs from 'node:fs'
import path from 'node:path'
import pg from 'pg'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import { appendOnlyTables } from '../../lib/db/append-only'
import { appRole } from '../../lib/db/embedded/roles'
import { tablesKeptByTriggers } from '../../lib/db/kept-by-triggers'
import { differenceFromSchema, migrate } from '../../lib/db/migrate'
import { tablesWithoutBakery } from '../../lib/db/tables-without-bakery'
import { readTables, type ForeignKey, type Table } from '../support/catalogue'
import { findCatalogueFaults } from '../support/catalogue-faults'
import { connected, freshDatabase, type FreshDatabase } from '../support/database'
import { dropChecks, MinimalRows } from '../support/minimal-rows'

const lists = { withoutBakery: tablesWithoutBakery, appendOnly: appendOnlyTables, keptByTriggers: tablesKeptByTriggers }
const onlyGrows = 'EV001'
const notAllowed = '42501'

let database: FreshDatabase
beforeAll(async () => {
  database = await freshDatabase()
})
afterAll(() => database.drop())

/** Does the work in a transaction that is rolled back. */
async function scratch<T>(url: string, work: (client: pg.Client) => Promise<T>): Promise<T> {
  return connected(url, async (client) => {
    await client.query('BEGIN')
    return work(client)
  })
}

/** SQLSTATE with which a statement is refused, and the constraint that did it; 'accepted' when it is not. */
async function refusalOf(
  client: pg.Client,
  statement: () => Promise<unknown>,
): Promise<{ code: string; constraint?: string }> {
  await client.query('SAVEPOINT before_try')
  try {
    await statement()
    return { code: 'accepted' }
  } catch (error) {
    if (!(error instanceof pg.DatabaseError) || error.code === undefined) throw error
    await client.query('ROLLBACK TO SAVEPOINT before_try')
    return { code: error.code, constraint: error.constraint }
  }
}

test('every table keeps bakeries apart, and records that only grow are guarded', async () => {
  const faults = await connected(database.superUrl, (client) => findCatalogueFaults(client, lists))
  expect(faults).toEqual([])
})

describe('the check reports', () => {
  const spoons = `CREATE TABLE spoon (bakery_id uuid NOT NULL REFERENCES bakery ON DELETE RESTRICT ON UPDATE NO ACTION, id uuid NOT NULL, PRIMARY KEY (bakery_id, id))`
  const cases: [string, string, string][] = [
    [
      'a table without a bakery',
      'CREATE TABLE spoon (id uuid PRIMARY KEY)',
      'spoon: has no bakery_id; if it holds nothing of a bakery, name it in lib/db/tables-without-bakery.ts',
    ],
    [
      'a key that begins with something else',
      'CREATE TABLE spoon (bakery_id uuid NOT NULL, id uuid, PRIMARY KEY (id, bakery_id))',
      'spoon: its primary key must begin with bakery_id',
    ],
    [
      'a bakery that nothing checks',
      'CREATE TABLE spoon (bakery_id uuid NOT NULL, id uuid, PRIMARY KEY (bakery_id, id))',
      'spoon: nothing makes sure that its bakery exists',
    ],
    [
      'a table of one row a bakery without the way to it',
      'CREATE TABLE spoon (bakery_id uuid PRIMARY KEY)',
      'spoon: the key bakery_id alone needs a foreign key to bakery',
    ],
    [
      'a bakery that is no uuid',
      'CREATE TABLE spoon (bakery_id text, id uuid, PRIMARY KEY (bakery_id, id))',
      'spoon.bakery_id: must be a uuid and not null',
    ],
    [
      'a unique key across bakeries',
      `${spoons}; ALTER TABLE spoon ADD name text UNIQUE`,
      'spoon: unique key spoon_name_key must begin with bakery_id',
    ],
    [
      'an index across bakeries',
      'CREATE INDEX by_name ON person (name, bakery_id)',
      'person: index by_name must begin with bakery_id',
    ],
    [
      'an index on an expression across bakeries',
      'CREATE INDEX by_name ON person (lower(name))',
      'person: index by_name must begin with bakery_id',
    ],
    [
      'a foreign key without the bakery',
      `${spoons}; CREATE UNIQUE INDEX spoon_id ON spoon (id); ALTER TABLE person ADD spoon_id uuid CONSTRAINT holds REFERENCES spoon (id) ON DELETE RESTRICT`,
      'person: foreign key holds must carry bakery_id on both sides',
    ],
    [
      'a foreign key that crosses the bakery with another column',
      `${spoons}; ALTER TABLE spoon ADD other uuid, ADD CONSTRAINT crossed FOREIGN KEY (other, bakery_id) REFERENCES person (bakery_id, id) ON DELETE RESTRICT`,
      'spoon: foreign key crossed must carry bakery_id on both sides',
    ],
    [
      'a delete that cascades',
      `${spoons}; ALTER TABLE spoon ADD CONSTRAINT of_person FOREIGN KEY (bakery_id, id) REFERENCES person ON DELETE CASCADE`,
      'spoon: foreign key of_person must be ON DELETE RESTRICT',
    ],
    [
      'an update that cascades',
      `${spoons}; ALTER TABLE spoon ADD CONSTRAINT of_person FOREIGN KEY (bakery_id, id) REFERENCES person ON DELETE RESTRICT ON UPDATE CASCADE`,
      'spoon: foreign key of_person must be ON UPDATE NO ACTION',
    ],
    [
      'a foreign key without an index',
      `${spoons}; ALTER TABLE spoon ADD held_by uuid, ADD CONSTRAINT holds FOREIGN KEY (bakery_id, held_by) REFERENCES person ON DELETE RESTRICT; CREATE INDEX held ON spoon (bakery_id, held_by) WHERE held_by IS NOT NULL`,
      'spoon: no index begins with the columns of foreign key holds',
    ],
    ['a time without its zone', `${spoons}; ALTER TABLE spoon ADD at timestamp(3)`, 'spoon.at: must be timestamptz(3)'],
    [
      'a time of another precision',
      `${spoons}; ALTER TABLE spoon ADD at timestamptz`,
      'spoon.at: must be timestamptz(3)',
    ],
    [
      'a time by default',
      'ALTER TABLE person ALTER created_at SET DEFAULT now()',
      'person.created_at: the command gives the time, never a default',
    ],
    [
      'a guard that is gone',
      'DROP TRIGGER audit_entry_never_emptied ON audit_entry',
      'audit_entry: only grows, but no statement trigger refuses TRUNCATE',
    ],
    [
      'a guard that is switched off',
      'ALTER TABLE audit_entry DISABLE TRIGGER audit_entry_only_grows',
      'audit_entry: only grows, but no row trigger refuses DELETE',
    ],
    [
      'a guard for some rows only',
      `DROP TRIGGER audit_entry_only_grows ON audit_entry; CREATE TRIGGER narrow BEFORE UPDATE OR DELETE ON audit_entry FOR EACH ROW WHEN (OLD.number > 5) EXECUTE FUNCTION refuse_change()`,
      'audit_entry: only grows, but no row trigger refuses UPDATE',
    ],
    [
      'a guarded table that is in no list',
      'CREATE TRIGGER guarded BEFORE UPDATE OR DELETE ON person FOR EACH ROW EXECUTE FUNCTION refuse_change()',
      'person: trigger guarded says that it only grows, lib/db/append-only.ts does not',
    ],
    [
      'a right to change what only grows',
      `GRANT UPDATE (action) ON audit_entry TO ${appRole}`,
      "audit_entry: the app's role may UPDATE",
    ],
    [
      'a right to change what triggers keep',
      `GRANT UPDATE ON reading_place TO ${appRole}`,
      "reading_place: the app's role may UPDATE",
    ],
    ['a right to empty a table', `GRANT TRUNCATE ON person TO ${appRole}`, "person: the app's role may TRUNCATE"],
    [
      'a table of the app',
      `${spoons}; GRANT CREATE ON SCHEMA public TO ${appRole}; ALTER TABLE spoon OWNER TO ${appRole}`,
      "the app's role owns something",
    ],
    ['a right of everybody', 'GRANT DELETE ON audit_entry TO PUBLIC', "audit_entry: the app's role may DELETE"],
    [
      "the owner's rights in the app's role",
      `GRANT evendough_owner TO ${appRole}`,
      "the app's role has powers, or another role's rights",
    ],
    ['a listed table that is gone', 'DROP TABLE sign_in_limit', 'sign_in_limit: is in a list but not in the database'],
  ]
  test.each(cases)('%s', async (_, change, fault) => {
    const faults = await scratch(database.superUrl, async (client) => {
      await client.query(change)
      return findCatalogueFaults(client, lists)
    })
    expect(faults).toContain(fault)
  })
})

describe('migrations', () => {
  test('make exactly the schema out of an empty database, and nothing the second time', async () => {
    const empty = await freshDatabase('nothing')
    try {
      const names = await migrate(empty.ownerUrl, appRole)
      expect(names.length).toBeGreaterThan(0)
      expect(await differenceFromSchema(empty.ownerUrl)).toBe('-- This is an empty migration.')
      expect(await migrate(empty.ownerUrl, appRole)).toEqual([])
    } finally {
      await empty.drop()
    }
  })

  test('leave the checks, triggers, functions and partial indexes that the committed list names', async () => {
    const file = path.join(import.meta.dirname, 'expected-constraints.json')
    const { rows } = await connected(database.superUrl, (client) =>
      client.query<{ name: string; definition: string }>(`
        SELECT name, definition FROM (
          SELECT conrelid::regclass || ': check ' || conname AS name, pg_get_constraintdef(oid) AS definition
            FROM pg_constraint WHERE contype IN ('c', 'x') AND connamespace = 'public'::regnamespace
          UNION ALL SELECT tgrelid::regclass || ': trigger ' || tgname, pg_get_triggerdef(oid) FROM pg_trigger WHERE NOT tgisinternal
          UNION ALL SELECT indrelid::regclass || ': partial index ' || indexrelid::regclass, pg_get_indexdef(indexrelid) FROM pg_index
            WHERE indpred IS NOT NULL AND indrelid IN (SELECT oid FROM pg_class WHERE relnamespace = 'public'::regnamespace)
          UNION ALL SELECT 'function ' || proname, regexp_replace(prosrc, '\\s+', ' ', 'g') FROM pg_proc WHERE pronamespace = 'public'::regnamespace
        ) AS found ORDER BY name COLLATE "C"`),
    )
    const found = `${JSON.stringify(Object.fromEntries(rows.map(({ name, definition }) => [name, definition])), null, 2)}\n`
    const advice =
      'If a migration changed this on purpose: npx vitest run --project database tests/database/catalogue.test.ts -u, then read the difference and commit it'
    expect(fs.existsSync(file), 'the list is committed').toBe(true)
    await expect(found, advice).toMatchFileSnapshot(file)
  })
})

describe("the app's role", () => {
  const statements: [string, string][] = [
    ['make a table', 'CREATE TABLE spoon (id int)'],
    ['make a temporary table', 'CREATE TEMP TABLE spoon (id int)'],
    ['make a schema', 'CREATE SCHEMA drawer'],
    ['change a table', 'ALTER TABLE person ADD COLUMN spoon int'],
    ['switch a guard off', 'ALTER TABLE audit_entry DISABLE TRIGGER audit_entry_only_grows'],
    ['switch all guards off', "SET session_replication_role = 'replica'"],
    ['drop a guard', 'DROP TRIGGER audit_entry_only_grows ON audit_entry'],
    [
      'replace what a guard calls',
      `CREATE OR REPLACE FUNCTION refuse_change() RETURNS trigger LANGUAGE plpgsql AS 'BEGIN RETURN NEW; END'`,
    ],
    ['become the owner', 'SET ROLE evendough_owner'],
    ['give rights away', `GRANT UPDATE ON audit_entry TO ${appRole}`],
    ['rewrite the history of migrations', 'DELETE FROM _prisma_migrations'],
  ]
  test.each(statements)('cannot %s', async (_, statement) => {
    const refusal = await scratch(database.appUrl, (client) =>
      refusalOf(client, async () => {
        await client.query(statement)
        // A right that one does not have is not granted, with a warning only.
        if (statement.startsWith('GRANT')) await client.query('UPDATE audit_entry SET action = action')
      }),
    )
    expect(refusal.code).toBe(notAllowed)
  })
})

describe('rows of a table that only grows', () => {
  let grown: FreshDatabase
  let tables: Table[]
  beforeAll(async () => {
    grown = await freshDatabase()
    await connected(grown.ownerUrl, async (owner) => {
      await dropChecks(owner)
      tables = await readTables(owner)
      const rows = new MinimalRows(owner, tables)
      const bakeryId = randomUUID()
      for (const name of appendOnlyTables) await rows.rowOf(name, bakeryId)
    })
  })
  afterAll(() => grown.drop())

  const changes = (table: string): [string, string][] => [
    ['changed', `UPDATE ${table} SET bakery_id = bakery_id`],
    ['removed', `DELETE FROM ${table}`],
    [
      'changed by an insert that clashes',
      `INSERT INTO ${table} SELECT * FROM ${table} ON CONFLICT DO UPDATE SET bakery_id = EXCLUDED.bakery_id`,
    ],
    ['emptied', `TRUNCATE ${table} CASCADE`],
    ['emptied with their bakery', 'TRUNCATE bakery CASCADE'],
  ]
  test.each(
    appendOnlyTables.flatMap((table) => changes(table).map(([what, statement]) => ({ table, what, statement }))),
  )('of $table are not $what, by whomever', async ({ table, what, statement }) => {
    const primary = tables.find((one) => one.name === table)?.indexes.find((one) => one.primary)
    const whole = what.includes('clashes')
      ? statement.replace('ON CONFLICT', `ON CONFLICT (${primary?.columns.join(', ')})`)
      : statement
    const codes: Record<string, string> = {}
    for (const [role, url] of Object.entries({ app: grown.appUrl, owner: grown.ownerUrl, superuser: grown.superUrl })) {
      codes[role] = await scratch(url, async (client) => (await refusalOf(client, () => client.query(whole))).code)
    }
    expect(codes).toEqual({ app: notAllowed, owner: onlyGrows, superuser: onlyGrows })
  })
})

describe("another bakery's row", () => {
  let neighbours: FreshDatabase
  let tables: Table[]
  beforeAll(async () => {
    neighbours = await freshDatabase()
    await connected(neighbours.ownerUrl, async (owner) => {
      await dropChecks(owner)
      tables = await readTables(owner)
      for (const { name } of tables) await owner.query(`ALTER TABLE ${pg.escapeIdentifier(name)} DISABLE TRIGGER USER`)
    })
  })
  afterAll(() => neighbours.drop())

  test('cannot be pointed at, by any foreign key there is', async () => {
    const composite = tables.flatMap((table) =>
      table.foreignKeys.filter((one) => one.columns.length > 1).map((one) => ({ table, one })),
    )
    expect(composite.length).toBeGreaterThan(0)
    const answers: Record<string, unknown> = {}
    const wanted: Record<string, unknown> = {}
    await connected(neighbours.ownerUrl, async (owner) => {
      for (const { table, one } of composite) {
        await owner.query('BEGIN')
        answers[`${table.name}.${one.name}`] = await tryNeighbour(owner, table, one)
        await owner.query('ROLLBACK')
        wanted[`${table.name}.${one.name}`] = {
          neighbour: { code: '23503', constraint: one.name },
          own: { code: 'accepted' },
        }
      }
    })
    expect(answers).toEqual(wanted)
  })

  /** Points one foreign key at a row of another bakery, then at one of its own. */
  async function tryNeighbour(owner: pg.Client, table: Table, one: ForeignKey) {
    // Others that share a column would refuse first, and this one would go untried.
    const sharing = table.foreignKeys.filter(
      (other) =>
        other !== one && other.columns.some((column) => column !== 'bakery_id' && one.columns.includes(column)),
    )
    for (const { name } of sharing)
      await owner.query(`ALTER TABLE ${pg.escapeIdentifier(table.name)} DROP CONSTRAINT ${pg.escapeIdentifier(name)}`)
    const rows = new MinimalRows(owner, tables)
    const without = [one.name, ...sharing.map(({ name }) => name)]
    const [here, there] = [randomUUID(), randomUUID()]
    const pointed = async (bakeryId: string) => {
      const target = await rows.rowOf(one.target, bakeryId)
      const row = await rows.prepare(table.name, here, without)
      for (const [at, column] of one.columns.entries())
        if (column !== 'bakery_id') row[column] = target[one.targetColumns[at] ?? '']
      return row
    }
    await rows.rowOf('bakery', here)
    const foreign = await pointed(there)
    const own = await pointed(here)
    return {
      neighbour: await refusalOf(owner, () => rows.insert(table.name, foreign)),
      own: await refusalOf(owner, () => rows.insert(table.name, own)),
    }
  }
})
