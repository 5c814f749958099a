import 'server-only'
import type { z } from 'zod'
import { readCursor, writeCursor, type ListName } from './page-cursor'

/** A piece of a list. */
export type Page<Row> = {
  rows: Row[]
  /** How many there are in all, on whatever page. */
  count: number
  /** The cursor to go on from; null at the end. */
  after: string | null
  isFirst: boolean
}

type PageToRead<Row, Key> = ListName & {
  /** The cursor that came with the request, of this list or of any other. */
  after: string | undefined
  /** How many there are in all: asked only where the first page does not hold them. */
  count: () => Promise<number>
  /** Shape of the sort key in a cursor. It must tell any two rows apart. */
  key: z.ZodType<Key>
  /** Rows beyond a key, or from the start, in the order of the list. It looks within the bakery only, whatever the key. */
  read: (beyond: Key | null, take: number) => Promise<Row[]>
  /** Stands behind `read`, from which the compiler learns what a row is. */
  keyOf: (row: NoInfer<Row>) => readonly (string | number)[]
  length?: number
}

/** How many rows stand on a page of the desk. */
const pageLength = 50

/**
 * Reads a page of a list from a cursor on. Rows that come or go meanwhile move nobody else to another page, as they
 * would if rows were counted off. A cursor that is none, or behind which nothing is left, gives the first page.
 */
export async function readPage<Row, Key>({
  bakeryId,
  list,
  after,
  count,
  key,
  keyOf,
  read,
  length = pageLength,
}: PageToRead<Row, Key>): Promise<Page<Row>> {
  const beyond = after === undefined ? null : readCursor({ bakeryId, list }, after, key)
  const found = await read(beyond, length + 1)
  const isFirst = beyond === null || found.length === 0
  const ahead = beyond !== null && found.length === 0 ? await read(null, length + 1) : found
  const rows = ahead.slice(0, length)
  const last = rows.at(-1)
  return {
    rows,
    count: isFirst && ahead.length === rows.length ? rows.length : await count(),
    after: ahead.length > length && last ? writeCursor({ bakeryId, list }, keyOf(last)) : null,
    isFirst,
  }
}
