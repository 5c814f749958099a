import { setImmediate as turn } from 'node:timers'
import { promisify } from 'node:util'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { db } from '@/lib/db/client'
import { inTransaction } from '@/lib/db/transaction'
import { makeBakery } from '../../support/bakery'
import { freshDatabase, type FreshDatabase } from '../../support/database'

let database: FreshDatabase
beforeAll(async () => {
  database = await freshDatabase()
})
afterAll(() => database.drop())

test('a transaction sends one query at a time over its connection, also when it reads several relations', async () => {
  const warnings: string[] = []
  const listen = (warning: Error) => void warnings.push(warning.message)
  process.on('warning', listen)
  const { bakeryId } = await makeBakery()
  const people = await inTransaction((tx) =>
    tx.bakery.findUniqueOrThrow({
      where: { bakeryId },
      select: {
        people: { select: { name: true } },
        measures: { select: { code: true } },
        auditHead: { select: { number: true } },
      },
    }),
  )
  // Warnings are given at the end of the turn.
  await promisify(turn)()
  process.off('warning', listen)
  expect(people.people).toHaveLength(4)
  expect(people.measures.length).toBeGreaterThan(5)
  expect(warnings).toEqual([])
})

test('a query that fails does not hold up the next, outside the transaction', async () => {
  const { bakeryId } = await makeBakery()
  await expect(inTransaction((tx) => tx.bakery.create({ data: { bakeryId } as never }))).rejects.toThrow()
  expect(await db().person.count({ where: { bakeryId } })).toBe(4)
})
