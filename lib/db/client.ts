import 'server-only'
import { PrismaPg } from '@prisma/adapter-pg'
import { Prisma, PrismaClient } from './generated/client'
import { log } from './log'
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

function connect(url: string, pool: number): PrismaClient {
  const adapter = new PrismaPg(
    {
      connectionString: url,
      max: pool,
      // Without a limit a request waits for a connection for ever.
      connectionTimeoutMillis: 5_000,
      idleTimeoutMillis: 60_000,
      application_name: 'evendough',
      // UTC is not a taste here: the adapter drops the offset of what it reads.
      options: '-c timezone=UTC -c statement_timeout=15000 -c lock_timeout=3000 -c idle_in_transaction_session_timeout=15000',
    },
    // A dropped idle connection must not end the process.
    { onPoolError: (error) => log.warn({ event: 'database-pool', error: error.message }), onConnectionError: (error) => log.warn({ event: 'database-connection', error: error.message }) },
  )
  return new PrismaClient({ adapter, transactionOptions: { maxWait: 5_000, timeout: 10_000 } })
}
