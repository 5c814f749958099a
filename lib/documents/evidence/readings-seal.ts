import 'server-only'
import { hashOfText } from '../hash-of-text'

/**
 * The seal that evidence of format 1 has of the readings it rests on: SHA-256 of 'id content-hash' of each, a line
 * each, in the order in which they come.
 * @param readings in the order of their ids
 */
export function readingsSeal(readings: readonly { id: string; contentHash: string }[]): {
  count: number
  hash: string
} {
  return {
    count: readings.length,
    hash: hashOfText(readings.map(({ id, contentHash }) => `${id} ${contentHash}\n`).join('')),
  }
}
