import { afterAll, afterEach, beforeAll, expect, it } from 'vitest'
import { appendAudit } from '@/lib/db/append-audit'
import { openBookListener, type BookListener } from '@/lib/db/book-listener'
import { inTransaction } from '@/lib/db/transaction'
import { makeBakery, testNow, type TestBakery } from '@/tests/support/bakery'
import { connected, freshDatabase, type FreshDatabase } from '@/tests/support/database'

let database: FreshDatabase
let bakery: TestBakery
let neighbour: TestBakery
let listener: BookListener

beforeAll(async () => {
  database = await freshDatabase()
  bakery = await makeBakery('Mill Row')
  neighbour = await makeBakery('Next Door')
})
afterEach(() => listener.close())
afterAll(() => database.drop())

const noting = (...actions: string[]) =>
  inTransaction(async (tx) => {
    for (const action of actions) await appendAudit(tx, bakery.bakeryId, testNow, null, 'test', { action })
  })

/** Counts what is told of a bakery, and waits until the listener has begun: then everybody is told once. */
async function counted(bakeryId: string) {
  const count = { told: 0 }
  listener.listen(bakeryId, () => (count.told += 1))
  return count
}
const begun = (count: { told: number }) => expect.poll(() => count.told, { interval: 10 }).toBe(1)

it('tells at the commit, once for what one transaction notes, and only of that bakery', async () => {
  listener = openBookListener(database.appUrl)
  const own = await counted(bakery.bakeryId)
  const others = await counted(neighbour.bakeryId)
  await begun(own)
  await begun(others)

  let toldBefore = -1
  await inTransaction(async (tx) => {
    for (const action of ['first', 'second', 'third'])
      await appendAudit(tx, bakery.bakeryId, testNow, null, 'test', { action })
    toldBefore = own.told
  })
  expect(toldBefore).toBe(1)
  await expect.poll(() => own.told, { interval: 10 }).toBe(2)
  // Messages come in their order, so nothing of the three is still on its way once this one is here.
  await noting('fourth')
  await expect.poll(() => own.told, { interval: 10 }).toBe(3)
  expect(others.told).toBe(1)
})

it('tells nothing of what was rolled back', async () => {
  listener = openBookListener(database.appUrl)
  const own = await counted(bakery.bakeryId)
  await begun(own)
  await expect(
    inTransaction(async (tx) => {
      await appendAudit(tx, bakery.bakeryId, testNow, null, 'test', { action: 'never' })
      throw new Error('given up')
    }),
  ).rejects.toThrow('given up')
  await noting('kept')
  await expect.poll(() => own.told, { interval: 10 }).toBe(2)
})

it('listens again after its connection was cut, and then tells everybody to look', async () => {
  listener = openBookListener(database.appUrl, { askEveryMs: 30_000, shortestPauseMs: 10 })
  const own = await counted(bakery.bakeryId)
  const others = await counted(neighbour.bakeryId)
  await begun(own)
  await connected(database.superUrl, (admin) =>
    admin.query(
      `SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = current_database() AND application_name = 'evendough-listener'`,
    ),
  )
  await expect.poll(() => [own.told, others.told], { interval: 10 }).toEqual([2, 2])
  await noting('after')
  await expect.poll(() => own.told, { interval: 10 }).toBe(3)
})

it('tells whoever has left nothing, and ends its connection when it is closed', async () => {
  listener = openBookListener(database.appUrl)
  const own = await counted(bakery.bakeryId)
  let told = 0
  const leave = listener.listen(bakery.bakeryId, () => (told += 1))
  await begun(own)
  leave()
  await noting('unheard')
  await expect.poll(() => own.told, { interval: 10 }).toBe(2)
  expect(told).toBe(1)
  await listener.close()
  const { rows } = await connected(database.superUrl, (admin) =>
    admin.query<{ count: number }>(
      `SELECT count(*)::int AS count FROM pg_stat_activity WHERE datname = current_database() AND application_name = 'evendough-listener'`,
    ),
  )
  expect(rows).toEqual([{ count: 0 }])
})
