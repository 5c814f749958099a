import 'server-only'
import { createHash } from 'node:crypto'

/** SHA-256 of a text in UTF-8, in hexadecimal: what is signed, sealed and chained. */
export function hashOfText(text: string): string {
  return createHash('sha256').update(text, 'utf8').digest('hex')
}
