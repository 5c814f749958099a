import 'server-only'

/** How often is looked for what is due. */
const roundMs = 60_000
/** While the database is away no more seldom than this. */
const longestMs = 15 * 60_000

/**
 * After how long the jobs are looked at again, ms: a minute, and while the database is away twice as long each time, up
 * to a quarter of an hour.
 * @param failures rounds that failed in a row, ≥ 0
 */
export function nextRoundMs(failures: number): number {
  return Math.min(longestMs, roundMs * 2 ** Math.min(failures, 10))
}
