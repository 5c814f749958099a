import 'server-only'
import pg from 'pg'
import { log } from './log'
import { databaseSettings } from './settings'

/** For how long an answer is good, so that a page costs no question of its own. */
const goodForMs = 1_000
/** A database that is frozen takes connections and never answers. */
const longestMs = 2_000

type Probe = { pool: pg.Pool; answeredAt: number; asking?: Promise<boolean>; wasAway: boolean }

let probe: Probe | undefined

/**
 * Whether the database answers, asked over a connection of its own, so that a pool in use up to its limit is not taken
 * for a database that is away. A yes is good for a second, or until that connection breaks; after a no it is asked
 * again at once, by everybody who asks meanwhile together.
 */
export async function databaseAnswers(): Promise<boolean> {
  const asked = probe ?? makeProbe()
  probe = asked
  if (performance.now() - asked.answeredAt < goodForMs) return true
  asked.asking ??= ask(asked).finally(() => (asked.asking = undefined))
  return asked.asking
}

/** Gives the connection back, for a process or a test that ends. */
export async function closeProbe(): Promise<void> {
  const closing = probe
  probe = undefined
  await closing?.pool.end()
}

function makeProbe(): Probe {
  const pool = new pg.Pool({
    connectionString: databaseSettings().url,
    max: 1,
    connectionTimeoutMillis: longestMs,
    query_timeout: longestMs,
    idleTimeoutMillis: 0,
    application_name: 'evendough',
  })
  const made: Probe = { pool, answeredAt: -Infinity, wasAway: false }
  pool.on('error', () => (made.answeredAt = -Infinity))
  return made
}

async function ask(asked: Probe): Promise<boolean> {
  try {
    await asked.pool.query('SELECT 1')
    asked.answeredAt = performance.now()
    if (asked.wasAway) log.info({ event: 'database-answers-again' })
    asked.wasAway = false
    return true
  } catch (error) {
    // Once, not for each request that is turned away.
    if (!asked.wasAway)
      log.warn({ event: 'database-away', error: error instanceof Error ? error.message : String(error) })
    asked.wasAway = true
    return false
  }
}
