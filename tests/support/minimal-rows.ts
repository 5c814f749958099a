import { randomUUID } from 'node:crypto'
import pg from 'pg'
import type { Column, Table } from './catalogue'

export type Row = Record<string, unknown>

/**
 * Makes rows out of nothing but the catalogue: the required columns, filled by type, and the rows that they point
 * at. So a table that is added later is covered without a word. Checks and triggers must be off in the database.
 */
export class MinimalRows {
  readonly #made = new Map<string, Row>()
  #count = 0

  constructor(
    private readonly client: pg.Client,
    private readonly tables: readonly Table[],
  ) {}

  /** The one row of a table that belongs to a bakery, made at the first call with what it points at. */
  async rowOf(tableName: string, bakeryId: string, path: readonly string[] = []): Promise<Row> {
    const memo = `${tableName} ${bakeryId}`
    const made = this.#made.get(memo)
    if (made) return made
    if (path.includes(tableName))
      throw new Error(`required foreign keys go in a circle: ${[...path, tableName].join(' → ')}`)
    const row = await this.prepare(tableName, bakeryId, [], path)
    await this.insert(tableName, row)
    this.#made.set(memo, row)
    return row
  }

  /** A row that is not inserted yet. What it must point at is made, but for the foreign keys named. */
  async prepare(
    tableName: string,
    bakeryId: string,
    without: readonly string[] = [],
    path: readonly string[] = [],
  ): Promise<Row> {
    const table = this.table(tableName)
    const row: Row = { bakery_id: bakeryId }
    const required = new Set(table.columns.filter((column) => column.required).map((column) => column.name))
    for (const one of table.foreignKeys) {
      if (without.includes(one.name) || !one.columns.every((column) => required.has(column))) continue
      const target = await this.rowOf(one.target, bakeryId, [...path, tableName])
      for (const [at, column] of one.columns.entries()) row[column] = target[one.targetColumns[at] ?? '']
    }
    for (const column of table.columns) {
      if (column.required && !(column.name in row) && !column.madeByDatabase)
        row[column.name] = this.#fill(tableName, column)
    }
    return row
  }

  async insert(tableName: string, row: Row): Promise<void> {
    const columns = Object.keys(row).filter((name) =>
      this.table(tableName).columns.some((column) => column.name === name),
    )
    const names = columns.map((name) => pg.escapeIdentifier(name)).join(', ')
    const places = columns.map((_, at) => `$${at + 1}`).join(', ')
    await this.client.query(
      `INSERT INTO ${pg.escapeIdentifier(tableName)} (${names}) VALUES (${places})`,
      columns.map((name) => row[name]),
    )
  }

  table(name: string): Table {
    const found = this.tables.find((table) => table.name === name)
    if (!found) throw new Error(`there is no table ${name}`)
    return found
  }

  /** A value of the column's type, another one each time where the type has room for that. */
  #fill(table: string, column: Column): unknown {
    this.#count++
    if (column.enumLabel !== null) return column.enumLabel
    switch (column.type) {
      case 'uuid':
        return randomUUID()
      case 'text':
      case 'varchar':
        return `t${this.#count}`
      case 'bpchar':
        return 'A'
      case 'int2':
      case 'int4':
      case 'int8':
      case 'numeric':
      case 'float8':
        return this.#count
      case 'bool':
        return false
      case 'timestamptz':
        return '2026-03-02T05:30:00Z'
      case 'date':
        return '2026-03-02'
      case 'json':
      case 'jsonb':
        return '{}'
      case 'bytea':
        return Buffer.from([this.#count % 256])
      default:
        if (column.type.startsWith('_')) return '{}'
        throw new Error(`${table}.${column.name}: say here how a value of type ${column.type} is made`)
    }
  }
}

/** Takes out of a scratch database what would refuse rows made by type alone. Keys and foreign keys stay. */
export async function dropChecks(owner: pg.Client): Promise<void> {
  const { rows } = await owner.query<{ statement: string }>(
    `SELECT format('ALTER TABLE %s DROP CONSTRAINT %I', conrelid::regclass, conname) AS statement FROM pg_constraint
     WHERE contype = 'c' AND connamespace = 'public'::regnamespace`,
  )
  for (const { statement } of rows) await owner.query(statement)
}
