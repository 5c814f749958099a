import { afterAll, afterEach, beforeAll, beforeEach, expect, test } from 'vitest'
import { closeProbe, databaseAnswers } from '@/lib/db/database-answers'
import { connected, freshDatabase, type FreshDatabase } from '../../support/database'
import { openGate, type Gate } from '../../support/gate'

let database: FreshDatabase
let gate: Gate

beforeAll(async () => {
  database = await freshDatabase()
})
afterAll(() => database.drop())

beforeEach(async () => {
  const url = new URL(database.appUrl)
  gate = await openGate(Number(url.port))
  url.port = String(gate.port)
  process.env.DATABASE_URL = url.href
})
afterEach(async () => {
  await closeProbe()
  await gate.close()
})

test('a hundred at once ask over one connection', async () => {
  expect(await Promise.all(Array.from({ length: 100 }, databaseAnswers))).toEqual(Array<boolean>(100).fill(true))
  expect(gate.connections()).toBe(1)
})

test('a database that goes away is noticed though it answered a moment before, and so is its coming back', async () => {
  expect(await databaseAnswers()).toBe(true)
  await gate.shut()
  await expect.poll(databaseAnswers, { interval: 10 }).toBe(false)
  await gate.open()
  expect(await databaseAnswers()).toBe(true)
})

test('a database that ends the connection by order is asked anew', async () => {
  expect(await databaseAnswers()).toBe(true)
  const ended = await connected(database.superUrl, (client) =>
    client.query(
      `SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE datname = current_database() AND application_name = 'evendough'`,
    ),
  )
  expect(ended.rowCount).toBe(1)
  await expect.poll(async () => [await databaseAnswers(), gate.connections()], { interval: 10 }).toEqual([true, 2])
})

test('a database that takes connections and never answers is away', async () => {
  gate.freeze()
  expect(await databaseAnswers()).toBe(false)
  await gate.open()
  expect(await databaseAnswers()).toBe(true)
})

test('a frozen database is noticed over a connection that answered before', async () => {
  expect(await databaseAnswers()).toBe(true)
  gate.freeze()
  await expect.poll(databaseAnswers, { timeout: 10_000 }).toBe(false)
  await gate.open()
  expect(await databaseAnswers()).toBe(true)
})
