import { afterAll, beforeAll, expect, test } from 'vitest'
import { db } from '@/lib/db/client'
import { freshDatabase, type FreshDatabase } from '../../support/database'

let database: FreshDatabase
beforeAll(async () => {
  database = await freshDatabase()
})
afterAll(() => database.drop())

test('every connection has its zone, its time limits and its way of planning before its first query', async () => {
  const connections = await Promise.all(
    Array.from(
      { length: 4 },
      () =>
        db()
          .$queryRaw`SELECT current_setting('timezone') AS zone, current_setting('statement_timeout') AS statement, current_setting('lock_timeout') AS lock, current_setting('idle_in_transaction_session_timeout') AS idle, current_setting('plan_cache_mode') AS plans`,
    ),
  )
  for (const rows of connections)
    expect(rows).toMatchObject([
      { zone: 'UTC', statement: '15s', lock: '3s', idle: '15s', plans: 'force_generic_plan' },
    ])
})
