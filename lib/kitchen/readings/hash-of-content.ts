import 'server-only'
import { hashOfText } from '../../documents/hash-of-text'
import { readingContentText, type ReadingEntry } from './reading-content.input'

/** SHA-256 of what was entered: the same content has the same hash on the device and here. */
export function hashOfContent(entry: ReadingEntry): string {
  return hashOfText(readingContentText(entry))
}
