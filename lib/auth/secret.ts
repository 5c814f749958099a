import 'server-only'
import { createHash, randomBytes } from 'node:crypto'

/** A random secret of 128 bits, for a session, a single-use link or a tablet. */
export function makeSecret(): string {
  return randomBytes(16).toString('base64url')
}

/** What the database keeps of a secret or an e-mail address: its SHA-256, apart for each purpose. */
export function hashSecret(
  purpose:
    | 'email'
    | 'session'
    | 'invitation'
    | 'first-run'
    | 'limit'
    | 'station-code'
    | 'station'
    | 'station-shift'
    | 'badge',
  secret: string,
): string {
  return createHash('sha256').update(`${purpose}:${secret}`, 'utf8').digest('hex')
}
