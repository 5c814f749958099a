import path from 'node:path'
import { expect } from 'playwright/test'
import { closeDb } from '../../lib/db/client'
import { makeBakery } from '../support/bakery'
import { openKillable } from '../support/killable-chromium'
import { lookInto } from '../support/look-into'
import { ready, test } from '../support/start'
import { allInBook, keepSome, keptBySome, openPromise, sameEverywhere } from '../support/keep-some'
import { enrolAndLogOn, readyToRead, tabletIn } from '../support/tablet'
import { entriesInBook } from '../support/tablet-log'

test('the browser is killed with entries waiting: each that was shown as on this tablet is in the book once', async ({
  start,
  folder,
  port,
}) => {
  test.setTimeout(240_000)
  const one = start({}, ['--empty'])
  await one.until(ready)
  lookInto(path.join(folder, 'data'))
  const { code, dough } = await readyToRead(await makeBakery('Mill Row', new Date()))
  const url = `http://localhost:${port}`
  // Chromium writes cookies half a minute late: the tablet was set up, and its browser closed, some time before.
  const enrolled = await openKillable(folder, url)
  const fresh = await tabletIn(enrolled.context)
  await enrolAndLogOn(fresh, code)
  await fresh.page.evaluate(() => navigator.serviceWorker.ready)
  await enrolled.context.close()
  const first = await openKillable(folder, url)
  await first.context.setOffline(true)
  const before = await tabletIn(first.context)
  await before.page.goto('/station')
  await keepSome(before, dough.code)
  const count = keptBySome
  // The moment that it is shown, and not one later.
  await before.page.getByText(`${count} on this tablet, not sent yet`).waitFor()
  await first.kill()
  expect(await entriesInBook()).toEqual([])

  // It is killed once more on its way to the book: the request is out, and its answer finds nobody.
  const second = await openKillable(folder, url)
  const killed = openPromise()
  await second.context.route('**/api/v1/entries', async (route) => {
    await route.fetch()
    await second.kill()
    killed.keep()
  })
  const sending = await tabletIn(second.context)
  await sending.page.goto('/station').catch(() => undefined)
  await killed.promise
  expect(await entriesInBook()).toHaveLength(count)

  const third = await openKillable(folder, url)
  const { page, faults } = await tabletIn(third.context)
  await page.goto('/station')
  await allInBook(page)
  await sameEverywhere(page, count)
  expect(faults).toEqual([])
  await third.context.close()
  await closeDb()
})
