import 'server-only'
import { z } from 'zod'
import { isKeepable } from './seen-text.input'
import { instant } from './text.input'

/** Which list of which bakery a cursor belongs to. */
export type ListName = { bakeryId: string; list: string }

/** The sorts of value that a list is sorted by, as a cursor holds them: all that the database takes, and nothing that it refuses. */
export const keyParts = {
  id: z.uuid(),
  /** A number of the bakery's own counting, as the database's 32 bits hold it. */
  number: z.int().min(1).max(2_147_483_647),
  text: z.string().refine(isKeepable),
  time: instant.transform((text) => new Date(text)),
}

/** A place in a list, as an address can hold it: whose list it is, and the sort key of the last row that was shown. */
export function writeCursor({ bakeryId, list }: ListName, key: readonly (string | number)[]): string {
  return Buffer.from(JSON.stringify([bakeryId, list, ...key])).toString('base64url')
}

/**
 * The sort key out of a cursor, read by its shape; null where it is none, or one of another list or bakery. A cursor
 * is no secret and opens nothing: whoever makes one up gets another place in their own list.
 */
export function readCursor<Key>({ bakeryId, list }: ListName, cursor: string, shape: z.ZodType<Key>): Key | null {
  const [ofBakery, ofList, ...key] = partsOf(cursor)
  if (ofBakery !== bakeryId || ofList !== list) return null
  return shape.safeParse(key).data ?? null
}

function partsOf(cursor: string): unknown[] {
  try {
    const read: unknown = JSON.parse(Buffer.from(cursor, 'base64url').toString())
    return Array.isArray(read) ? read : []
  } catch {
    return []
  }
}
