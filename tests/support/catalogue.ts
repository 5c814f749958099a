import type pg from 'pg'

export type Column = {
  name: string
  type: string
  typeLength: number
  required: boolean
  hasDefault: boolean
  madeByDatabase: boolean
  enumLabel: string | null
}
export type Index = { name: string; unique: boolean; primary: boolean; partial: boolean; columns: string[] }
export type ForeignKey = {
  name: string
  columns: string[]
  target: string
  targetColumns: string[]
  onDelete: string
  onUpdate: string
}
export type Trigger = { name: string; bits: number; calls: string; enabled: string; narrowed: boolean }
export type Table = {
  name: string
  columns: Column[]
  indexes: Index[]
  foreignKeys: ForeignKey[]
  triggers: Trigger[]
}

/** Reads every table of the public schema from PostgreSQL's own catalogue. Names of columns keep their order in the key. */
export async function readTables(client: pg.Client): Promise<Table[]> {
  const { rows } = await client.query<Table>(`
    SELECT c.relname AS name,
      (SELECT coalesce(json_agg(json_build_object(
          'name', a.attname, 'type', t.typname, 'typeLength', a.atttypmod, 'required', a.attnotnull, 'hasDefault', a.atthasdef,
          'madeByDatabase', a.attgenerated <> '' OR a.attidentity <> '',
          'enumLabel', (SELECT e.enumlabel FROM pg_enum e WHERE e.enumtypid = t.oid ORDER BY e.enumsortorder LIMIT 1)
        ) ORDER BY a.attnum), '[]')
        FROM pg_attribute a JOIN pg_type t ON t.oid = a.atttypid
        WHERE a.attrelid = c.oid AND a.attnum > 0 AND NOT a.attisdropped) AS columns,
      (SELECT coalesce(json_agg(json_build_object(
          'name', ic.relname, 'unique', i.indisunique, 'primary', i.indisprimary, 'partial', i.indpred IS NOT NULL,
          'columns', (SELECT json_agg(CASE WHEN k.attnum = 0 THEN '(expression)' ELSE a.attname END ORDER BY k.place)
            FROM unnest(i.indkey::int2[]) WITH ORDINALITY AS k (attnum, place)
            LEFT JOIN pg_attribute a ON a.attrelid = i.indrelid AND a.attnum = k.attnum WHERE k.place <= i.indnkeyatts)
        ) ORDER BY ic.relname), '[]')
        FROM pg_index i JOIN pg_class ic ON ic.oid = i.indexrelid WHERE i.indrelid = c.oid) AS indexes,
      (SELECT coalesce(json_agg(json_build_object(
          'name', f.conname, 'target', f.confrelid::regclass::text, 'onDelete', f.confdeltype, 'onUpdate', f.confupdtype,
          'columns', (SELECT json_agg(a.attname ORDER BY k.place) FROM unnest(f.conkey) WITH ORDINALITY AS k (attnum, place)
            JOIN pg_attribute a ON a.attrelid = f.conrelid AND a.attnum = k.attnum),
          'targetColumns', (SELECT json_agg(a.attname ORDER BY k.place) FROM unnest(f.confkey) WITH ORDINALITY AS k (attnum, place)
            JOIN pg_attribute a ON a.attrelid = f.confrelid AND a.attnum = k.attnum)
        ) ORDER BY f.conname), '[]')
        FROM pg_constraint f WHERE f.conrelid = c.oid AND f.contype = 'f') AS "foreignKeys",
      (SELECT coalesce(json_agg(json_build_object(
          'name', g.tgname, 'bits', g.tgtype, 'calls', p.proname, 'enabled', g.tgenabled,
          'narrowed', g.tgqual IS NOT NULL OR cardinality(g.tgattr::int2[]) > 0
        ) ORDER BY g.tgname), '[]')
        FROM pg_trigger g JOIN pg_proc p ON p.oid = g.tgfoid WHERE g.tgrelid = c.oid AND NOT g.tgisinternal) AS triggers
    FROM pg_class c JOIN pg_namespace n ON n.oid = c.relnamespace
    WHERE n.nspname = 'public' AND c.relkind IN ('r', 'p')
    ORDER BY c.relname`)
  return rows
}
