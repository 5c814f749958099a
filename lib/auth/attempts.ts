import 'server-only'
import type { Db, Tx } from '../db/client'
import { hashSecret } from './secret'

/** Wrong tries before the waiting begins; from then on it doubles from two seconds to a quarter of an hour. */
const freeTries = 5
const longestWaitS = 15 * 60
/** After this many in a row only the owner's reset link, or a right password sent meanwhile at another key, helps. */
const mostTries = 100
/** Tries older than this no longer count. */
const forgetAfterMs = 24 * 60 * 60_000

/**
 * Counts a try before it is judged, so that many at once cannot outrun the count; `attemptSucceeded` takes it back.
 * One row in the database for each name, whoever asks and through whichever process.
 * @returns whether the try may be judged at all
 */
export async function mayAttempt(db: Db | Tx, name: string, now: Date): Promise<boolean> {
  const keyHash = hashSecret('limit', name)
  const stale = new Date(now.getTime() - forgetAfterMs)
  const rows = await db.$queryRaw<{ failures: number }[]>`
    INSERT INTO sign_in_limit AS l (key_hash, failures, last_at, locked_until)
    VALUES (${keyHash}, 1, ${now}, NULL)
    ON CONFLICT (key_hash) DO UPDATE SET
      failures = CASE WHEN l.last_at < ${stale} THEN 1 ELSE l.failures + 1 END,
      last_at = ${now},
      locked_until = CASE
        WHEN l.last_at < ${stale} OR l.failures + 1 < ${freeTries} THEN NULL
        ELSE ${now}::timestamptz + make_interval(secs => least(${longestWaitS}::float8, power(2, least(l.failures + 2 - ${freeTries}, 20))))
      END
    WHERE (l.locked_until IS NULL OR l.locked_until <= ${now}) AND (l.failures < ${mostTries} OR l.last_at < ${stale})
    RETURNING failures`
  return rows.length === 1
}

/** Forgets the failures of a name, after a right password or a reset by the owner, and all that are too old to count. */
export async function forgetAttempts(db: Db | Tx, name: string, now: Date): Promise<void> {
  await db.signInLimit.deleteMany({
    where: { OR: [{ keyHash: hashSecret('limit', name) }, { lastAt: { lt: new Date(now.getTime() - forgetAfterMs) } }] },
  })
}
