import 'server-only'

/** Texts that are kept prepared. Each costs memory on every connection, and lists in them come in many lengths. */
const most = 500

/**
 * Names a read, so that PostgreSQL parses and plans it once a connection and not each time: for a page's large reads
 * that is more than half of their time. Writes, and reads beyond the number that is kept, go without a name.
 */
export function namePreparedReads(): (query: { sql: string }) => string {
  const names = new Map<string, string>()
  return ({ sql }) => {
    if (!/^\s*SELECT\b/.test(sql)) return ''
    const held = names.get(sql)
    if (held !== undefined) return held
    if (names.size >= most) return ''
    const name = `read_${names.size}`
    names.set(sql, name)
    return name
  }
}
