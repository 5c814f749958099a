import 'server-only'
import { createHash } from 'node:crypto'
import type { ImportMatch } from './import-readings.input'

/** The form of table that a match is of: its separator and a hash of its header. A mended file keeps its match by it. */
export function matchedOf(header: readonly string[], separator: ImportMatch['separator']): string {
  return `${separator} ${createHash('sha256').update(JSON.stringify(header)).digest('hex')}`
}
