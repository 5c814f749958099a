import 'server-only'
import { PrismaPg } from '@prisma/adapter-pg'
import type { SqlDriverAdapterFactory } from '@prisma/driver-adapter-utils'
import pLimit from 'p-limit'
import type pg from 'pg'
import { namePreparedReads } from './prepared-reads'

/**
 * Prisma's adapter on a pool, with one fault mended: in a transaction Prisma sends the queries of several relations
 * at once over the one connection, which the driver will no longer take from its version 9 on. Here each waits for
 * the one before, as PostgreSQL makes them wait anyway.
 */
export function poolAdapter(pool: pg.Pool): SqlDriverAdapterFactory {
  const factory = new PrismaPg(pool, { disposeExternalPool: true, statementNameGenerator: namePreparedReads() })
  return {
    provider: factory.provider,
    adapterName: factory.adapterName,
    async connect() {
      const adapter = await factory.connect()
      const start = adapter.startTransaction.bind(adapter)
      adapter.startTransaction = async (isolation) => {
        const transaction = await start(isolation)
        const inTurn = pLimit(1)
        const [read, write] = [transaction.queryRaw.bind(transaction), transaction.executeRaw.bind(transaction)]
        transaction.queryRaw = (query) => inTurn(() => read(query))
        transaction.executeRaw = (query) => inTurn(() => write(query))
        return transaction
      }
      return adapter
    },
  }
}
