import 'server-only'
import pg from 'pg'
import { databaseSettings } from './settings'

const longestConnectMs = 5_000

/**
 * Does some work while holding a lock of the whole database, over a connection of its own: whoever holds it, in this
 * process or another, nobody else does. When that connection breaks, the lock is free for others, and `signal` says so.
 * @param key of the lock, an integer
 * @returns whether the lock was free; where it was not, nothing was done
 * @throws whatever connecting or the work throws
 */
export async function holdLock(key: number, work: (signal: AbortSignal) => Promise<void>): Promise<boolean> {
  const client = new pg.Client({
    connectionString: databaseSettings().url,
    application_name: 'evendough-jobs',
    connectionTimeoutMillis: longestConnectMs,
    keepAlive: true,
  })
  const lost = new AbortController()
  // Without a listener a broken connection would end the process.
  client.on('error', (error) => lost.abort(error))
  client.on('end', () => lost.abort())
  try {
    await client.connect()
    const { rows } = await client.query<{ free: boolean }>('SELECT pg_try_advisory_lock($1) AS free', [key])
    if (!rows[0]?.free) return false
    await work(lost.signal)
    return true
  } finally {
    // Ending the connection frees the lock; one that is broken has freed it.
    await client.end().catch(() => undefined)
  }
}
