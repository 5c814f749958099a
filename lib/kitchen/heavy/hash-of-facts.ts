import 'server-only'
import { createHash } from 'node:crypto'

/** One hash over everything that an answer rests on: data as JSON writes it, in the order in which it was read. */
export function hashOfFacts(facts: unknown): string {
  return createHash('sha256').update(JSON.stringify(facts), 'utf8').digest('base64')
}
