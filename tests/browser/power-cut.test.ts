import path from 'node:path'
import { type BrowserContext, expect, type Route } from 'playwright/test'
import pg from 'pg'
import { closeDb } from '../../lib/db/client'
import { embeddedUrl } from '../../lib/db/embedded/roles'
import { databaseName } from '../../lib/ops/open-database'
import { readOrMakeSecrets } from '../../lib/ops/secrets'
import { makeBakery } from '../support/bakery'
import { allInBook, keepSome, keptBySome, openPromise, sameEverywhere } from '../support/keep-some'
import { lookInto, postmasterOf } from '../support/look-into'
import { cutPower, ready, test } from '../support/start'
import { enrolAndLogOn, openTablet, readyToRead } from '../support/tablet'
import { entriesInBook } from '../support/tablet-log'

test('the server loses its power while a tablet sends: nothing is half kept, and each entry is in the book once', async ({
  browser,
  start,
  folder,
  port,
}) => {
  test.setTimeout(240_000)
  const data = path.join(folder, 'data')
  let one = start({}, ['--empty'])
  const startAgain = async () => {
    one = start({}, ['--empty'])
    await one.until(ready)
    lookInto(data)
  }
  const cut = async () => {
    await closeDb()
    await cutPower(one, data)
  }
  await one.until(ready)
  lookInto(data)
  const { code, dough } = await readyToRead(await makeBakery('Mill Row', new Date()))
  const tablet = await openTablet(browser, `http://localhost:${port}`)
  const { page, context, faults } = tablet
  await enrolAndLogOn(tablet, code)
  await page.evaluate(() => navigator.serviceWorker.ready)
  await context.setOffline(true)
  await keepSome(tablet, dough.code)
  await page.getByText(`${keptBySome} on this tablet, not sent yet`).waitFor()

  // In the middle of the transaction: what was read is written, the record is not, and nothing is answered.
  const record = await holdRecord(data)
  const sent = openPromise()
  await atNextEntries(context, async (route) => {
    const answer = route.fetch().catch(() => null)
    await record.untilWaitedFor()
    await cut()
    expect(await answer).toBeNull()
    sent.keep()
  })
  await context.setOffline(false)
  await page.clock.fastForward(61_000)
  await sent.promise
  await expect(page.getByText(`${keptBySome} on this tablet, not sent yet`)).toBeVisible()
  // No tablet asks before its book has been looked at.
  await context.setOffline(true)
  await startAgain()
  expect(one.output()).not.toContain('put back from a copy')
  expect(await entriesInBook()).toEqual([])

  // Right after it: all is in the book, and its answer never comes.
  const lost = openPromise()
  await atNextEntries(context, async (route) => {
    await route.fetch()
    await cut()
    lost.keep()
  })
  await context.setOffline(false)
  await page.clock.fastForward(61_000)
  await lost.promise
  await expect(page.getByText(`${keptBySome} on this tablet, not sent yet`)).toBeVisible()
  await startAgain()
  await context.unroute('**/api/v1/entries')
  expect(await entriesInBook()).toHaveLength(keptBySome)
  await allInBook(page)
  await sameEverywhere(page, keptBySome)
  expect(faults).toEqual([])
  await context.close()
  await closeDb()
})

/**
 * Does something with the next request that sends entries, and leaves it without an answer. Whoever asks again until the book is
 * back finds nobody there.
 */
async function atNextEntries(context: BrowserContext, act: (route: Route) => Promise<void>): Promise<void> {
  await context.unroute('**/api/v1/entries')
  let met = false
  await context.route('**/api/v1/entries', async (route) => {
    if (!met) {
      met = true
      await act(route)
    }
    await route.abort()
  })
}

/** Keeps everybody from writing into the record, for as long as the database runs. */
async function holdRecord(data: string) {
  const { superuserPassword } = readOrMakeSecrets(data)
  const url = embeddedUrl(postmasterOf(data).port, databaseName, 'postgres', superuserPassword)
  const [holder, looker] = [new pg.Client({ connectionString: url }), new pg.Client({ connectionString: url })]
  // The power is cut while they are there.
  for (const client of [holder, looker]) client.on('error', () => undefined)
  await Promise.all([holder.connect(), looker.connect()])
  await holder.query('BEGIN')
  await holder.query('LOCK TABLE audit_entry IN SHARE MODE')
  return {
    /** Waits until somebody who has written readings waits to write into the record. */
    async untilWaitedFor() {
      await expect(async () => {
        const { rowCount } = await looker.query(
          `SELECT 1 FROM pg_locks waits JOIN pg_locks wrote USING (pid)
           WHERE waits.relation = 'audit_entry'::regclass AND NOT waits.granted
             AND wrote.relation = 'reading'::regclass AND wrote.granted AND wrote.mode = 'RowExclusiveLock'`,
        )
        expect(rowCount).toBe(1)
      }).toPass()
    },
  }
}
