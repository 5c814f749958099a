import 'server-only'

/** How many of each kind stand on the first page. */
const mostShown = 3
/** One more is read, so that it shows whether there are more. */
export const mostRead = mostShown + 1

/** The first few of what waits, and how many there are. */
export type Few<Row> = {
  rows: Row[]
  count: number
  /** True where not all were looked at, so that there may be more than `count`. */
  isAtLeast: boolean
}

/** Reads the first few, and counts only where there are more than that: by far the most desks need one statement. */
export async function fewOf<Row>(
  read: (take: number) => Promise<Row[]>,
  count: () => Promise<number>,
): Promise<Few<Row>> {
  const found = await read(mostRead)
  return {
    rows: found.slice(0, mostShown),
    count: found.length > mostShown ? await count() : found.length,
    isAtLeast: false,
  }
}

/** The first few of rows that were all looked at, or of as many as are looked at. */
export function fewOfAll<Row>(rows: readonly Row[], isAtLeast: boolean): Few<Row> {
  return { rows: rows.slice(0, mostShown), count: rows.length, isAtLeast }
}
