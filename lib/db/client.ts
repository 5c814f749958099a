import 'server-only'
import pg from 'pg'
import { type Prisma, PrismaClient } from './generated/client'
import { log } from './log'
import { poolAdapter } from './pool-adapter'
import { databaseSettings } from './settings'

export type Db = PrismaClient
export type Tx = Prisma.TransactionClient

let open: { url: string; client: PrismaClient } | undefined

/** The process's one client. Opened at first use, so that a build needs no database. */
export function db(): PrismaClient {
  const { url, pool } = databaseSettings()
  if (open?.url !== url) open = { url, client: connect(url, pool) }
  return open.client
}

/** Closes the client, for a process or a test that ends. */
export async function closeDb(): Promise<void> {
  const closing = open
  open = undefined
  await closing?.client.$disconnect()
}

// UTC is not a taste here: the adapter drops the offset of what it reads. A pooler may hand on a session in which
// somebody prepared statements under the names that ours get. Left to itself PostgreSQL plans a prepared statement anew
// at its first five uses on each connection, which takes as long as three pages for a dough's one large read.
const sessionSettings =
  "DEALLOCATE ALL; SET timezone = 'UTC'; SET statement_timeout = 15000; SET lock_timeout = 3000; SET idle_in_transaction_session_timeout = 15000; SET plan_cache_mode = force_generic_plan"

/** Sets a new connection up by SQL, before anybody gets it: a pooler refuses settings in the start-up packet. */
function setUp(client: pg.PoolClient, done: (error?: Error) => void): void {
  client.query(sessionSettings, (error: Error | null) => done(error ?? undefined))
}

function connect(url: string, size: number): PrismaClient {
  const pool = new pg.Pool({
    connectionString: url,
    max: size,
    // Without a limit a request waits for a connection for ever.
    connectionTimeoutMillis: 5_000,
    idleTimeoutMillis: 60_000,
    // Longer than a statement may take: only a server that is frozen, or a network that swallows, is silent for so long.
    query_timeout: 20_000,
    application_name: 'evendough',
    verify: setUp,
  })
  // A dropped connection must not end the process, neither an idle one nor one in the middle of a transaction, where
  // nobody else listens.
  pool.on('error', (error) => log.warn({ event: 'database-pool', error: error.message }))
  pool.on('connect', (client) =>
    client.on('error', (error) => log.warn({ event: 'database-connection', error: error.message })),
  )
  return new PrismaClient({ adapter: poolAdapter(pool), transactionOptions: { maxWait: 5_000, timeout: 10_000 } })
}
