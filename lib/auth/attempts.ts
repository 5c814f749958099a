import 'server-only'
import type { Db, Tx } from '../db/client'
import { hashSecret } from './secret'
import { clocksDifferMs } from './session-life'

/** How many wrong tries of one name are judged. */
export type AttemptLimit = {
  /** Tries before the waiting begins; from then on it doubles from two seconds to a quarter of an hour. */
  freeTries: number
  /** After this many in a row nothing is judged until a day has passed without one, or the count is forgotten. */
  mostTries: number
}

const longestWaitS = 15 * 60
/** Tries older than this no longer count. */
const forgetAfterMs = 24 * 60 * 60_000

/**
 * Counts a try before it is judged, so that many at once cannot outrun the count; `forgetAttempts` takes it back.
 * One row in the database for each name, whoever asks and through whichever process. A count that lies in the future
 * was made while the clock was wrong, and starts afresh.
 * @returns whether the try may be judged at all
 */
export async function mayAttempt(
  db: Db | Tx,
  name: string,
  now: Date,
  { freeTries, mostTries }: AttemptLimit,
): Promise<boolean> {
  const keyHash = hashSecret('limit', name)
  const { past, future } = countsBetween(now)
  const rows = await db.$queryRaw<{ failures: number }[]>`
    INSERT INTO sign_in_limit AS l (key_hash, failures, last_at, locked_until)
    VALUES (${keyHash}, 1, ${now}, NULL)
    ON CONFLICT (key_hash) DO UPDATE SET
      failures = CASE WHEN l.last_at < ${past} OR l.last_at > ${future} THEN 1 ELSE l.failures + 1 END,
      last_at = ${now},
      locked_until = CASE
        WHEN l.last_at < ${past} OR l.last_at > ${future} OR l.failures + 1 < ${freeTries} THEN NULL
        ELSE ${now}::timestamptz + make_interval(secs => least(${longestWaitS}::float8, power(2, least(l.failures + 2 - ${freeTries}, 20))))
      END
    WHERE ((l.locked_until IS NULL OR l.locked_until <= ${now}) AND l.failures < ${mostTries}) OR l.last_at < ${past} OR l.last_at > ${future}
    RETURNING failures`
  return rows.length === 1
}

/** Takes one try back that turned out to be none. What was tried before it counts on; a wait that it began ends. */
export async function takeBackAttempt(db: Db | Tx, name: string, { freeTries }: AttemptLimit): Promise<void> {
  await db.$executeRaw`
    UPDATE sign_in_limit SET failures = failures - 1, locked_until = CASE WHEN failures <= ${freeTries} THEN NULL ELSE locked_until END
    WHERE key_hash = ${hashSecret('limit', name)} AND failures > 0`
}

/** Forgets the failures of names, after a right password or a new one, and all that no longer count. */
export async function forgetAttempts(db: Db | Tx, names: readonly string[], now: Date): Promise<void> {
  const { past, future } = countsBetween(now)
  await db.signInLimit.deleteMany({
    where: {
      OR: [
        { keyHash: { in: names.map((name) => hashSecret('limit', name)) } },
        { failures: { gt: 0 }, OR: [{ lastAt: { lt: past } }, { lastAt: { gt: future } }] },
      ],
    },
  })
}

function countsBetween(now: Date): { past: Date; future: Date } {
  return { past: new Date(now.getTime() - forgetAfterMs), future: new Date(now.getTime() + clocksDifferMs) }
}
