import 'server-only'
import { createHash } from 'node:crypto'
import { readingContentText, type ReadingEntry } from './reading-content.input'

/** SHA-256 of what was entered: the same content has the same hash on the device and here. */
export function hashOfContent(entry: ReadingEntry): string {
  return createHash('sha256').update(readingContentText(entry), 'utf8').digest('hex')
}
