import 'server-only'
import { createHash } from 'node:crypto'

/** Hash of a file and what parts its cells: what a match of columns is of. */
export function matchedOf(bytes: Uint8Array, separator: string): string {
  return `${createHash('sha256').update(bytes).digest('hex')} ${separator}`
}
