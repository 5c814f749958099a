import { makeStation } from '../../lib/kitchen/stations/make-station'
import { undoMove } from '../../lib/kitchen/shifts/undo-move'
import { moveBatch } from '../../lib/kitchen/shifts/move-batch'
import { expect, test, type App } from '../support/app'
import { callerOf, refusalOf, valueOf, type TestBakery } from '../support/bakery'
import { expectFit } from '../support/expect-fit'
import { putFormerStore, readStore } from '../support/former-store'
import { enrolAndLogOn, openTablet, readyToRead, tabletIn, type Tablet } from '../support/tablet'

const doughsOf = async (app: App, bakery: TestBakery) =>
  (
    await app.look.query<{ code: string; state: string }>(
      `SELECT code, state FROM batch WHERE bakery_id = $1 ORDER BY planned_order`,
      [bakery.bakeryId],
    )
  ).rows
const codesOf = async (app: App, bakery: TestBakery) => (await doughsOf(app, bakery)).map(({ code }) => code)

async function noteLost({ page, tap }: Tablet, code: string): Promise<void> {
  await tap(page.getByRole('button', { name: new RegExp(`^${code}`) }))
  await tap(page.getByRole('button', { name: 'Something went wrong' }))
  await tap(page.getByRole('button', { name: 'The dough is lost' }))
}

test('a lost dough is taken out and baked again in three taps, and another tablet shows the new one at once', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, dough } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  const there = valueOf(await makeStation.call(callerOf(bakery.owner.sessionSecret, new Date()), { name: 'Oven' }))
  const other = await openTablet(browser, app.url)
  await enrolAndLogOn(other, there.code)
  const beside = other.page

  // The third is the tap on what was lost.
  await noteLost(tablet, dough.code)
  await tap(page.getByRole('button', { name: 'It is lost: take it out' }))
  await expect(page.getByRole('heading', { name: `Dough ${dough.code}: lost` })).toBeVisible()
  await expect(page.getByText(`Batch ${dough.code} was lost. Bake it again today.`)).toBeVisible()
  const go = page.getByRole('button', { name: 'Bake it again' })
  await expect(go).toBeInViewport({ ratio: 1 })
  await tap(go)
  await expect(page.getByText(/^It is baked again as batch/)).toBeVisible()
  const codes = await codesOf(app, bakery)
  expect(codes).toHaveLength(3)
  const made = codes.at(-1)!
  await expect(page.getByText(`It is baked again as batch ${made}.`)).toBeVisible()
  await expect(page.getByRole('button', { name: /Take it back/ })).toHaveCount(0)
  await expect(beside.getByText(`Then: ${made}`)).toBeVisible()
  await expect(beside.getByRole('button', { name: new RegExp(`^${dough.code}.*It is baked again`) })).toBeVisible()

  // Its slips lead to where that is said.
  await tap(page.getByRole('button', { name: 'All doughs' }))
  await tap(page.getByRole('button', { name: 'Scan a slip' }))
  await page.getByLabel('Code of the dough').fill(dough.code)
  await page.keyboard.press('Enter')
  await expect(page.getByText(`It is baked again as batch ${made}.`)).toBeVisible()

  // In its turn it is begun like any other.
  await tap(page.getByRole('button', { name: 'All doughs' }))
  await tap(page.getByRole('button', { name: /^Begin dough/ }))
  await tap(page.getByRole('button', { name: 'All doughs' }))
  await expect(page.getByRole('button', { name: `Begin dough ${made}` })).toBeVisible()
  expect([...tablet.faults, ...other.faults]).toEqual([])
  await context.close()
  await other.context.close()
})

test('without the book nothing is taken out or baked again and it is said; a lost answer makes one dough', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, dough } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  await page.evaluate(() => navigator.serviceWorker.ready)
  await context.setOffline(true)
  await noteLost(tablet, dough.code)
  const take = page.getByRole('button', { name: 'It is lost: take it out' })
  await expect(page.getByText(/^What was noted or read of it here is not all in the book yet/)).toBeVisible()
  await expect(take).toBeDisabled()
  expect((await doughsOf(app, bakery))[0]?.state).toBe('weighing')
  await context.setOffline(false)
  await page.clock.fastForward(61_000)
  await expect(take).toBeEnabled()
  await tap(take)
  const go = page.getByRole('button', { name: 'Bake it again' })
  await go.waitFor()

  await context.setOffline(true)
  await tap(go)
  await expect(page.getByText(/^The book does not answer, so it is not certain that it is baked again/)).toBeVisible()
  await expect(page.getByText(/^Only the book can give out a code/)).toBeVisible()
  expect(await codesOf(app, bakery)).toHaveLength(2)

  const named: (string | undefined)[] = []
  await context.route('**/api/v1/station/bake-again', async (route) => {
    named.push(route.request().headers()['evendough-once'])
    if (named.length > 1) return route.continue()
    await route.fetch()
    return route.abort()
  })
  await context.route('**/api/v1/station/floor', (route) => route.abort())
  await context.setOffline(false)
  await page.reload()
  await tap(go)
  await expect.poll(() => codesOf(app, bakery)).toHaveLength(3)
  await expect(page.getByText(/^The book does not answer, so it is not certain that it is baked again/)).toBeVisible()
  await page.reload()
  await page.clock.fastForward(700)
  await go.evaluate((button: HTMLButtonElement) => {
    for (let at = 0; at < 20; at++) button.click()
  })
  await expect.poll(() => named.length).toBe(2)
  await context.unroute('**/api/v1/station/floor')
  await page.clock.fastForward(61_000)
  await expect(page.getByText(/^It is baked again as batch/)).toBeVisible()
  expect(new Set(named).size).toBe(1)
  expect(await codesOf(app, bakery)).toHaveLength(3)
  expect(tablet.faults).toEqual([])
  await context.close()
})

test('a dough that was taken out by a slip is taken back within ten seconds, and not after', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, dough } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  await noteLost(tablet, dough.code)
  const aside = page.getByRole('button', { name: 'Set it aside' })
  await tap(aside)
  const back = page.getByRole('button', { name: 'Take it back: it is not out' })
  await back.waitFor()
  // On a machine that is slow the book may be asked later than this, and says so in its words.
  await app.look.query('ALTER TABLE batch DISABLE TRIGGER USER')
  await app.look.query(`UPDATE batch SET moved_at = now() WHERE state = 'set_aside' AND bakery_id = $1`, [
    bakery.bakeryId,
  ])
  await app.look.query('ALTER TABLE batch ENABLE TRIGGER USER')
  await tap(back)
  await expect(page.getByRole('button', { name: 'Something went wrong' })).toBeVisible()
  expect((await doughsOf(app, bakery))[0]?.state).toBe('weighing')
  await tap(aside)
  await back.waitFor()
  await page.clock.fastForward(10_500)
  await expect(back).toHaveCount(0)
  expect((await doughsOf(app, bakery))[0]?.state).toBe('set_aside')
  await context.close()
})

test('who was faster at the desk is said, and the book’s word on what may be taken out is shown', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, dough } = await readyToRead(bakery)
  const desk = callerOf(bakery.early.sessionSecret, new Date())
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  await noteLost(tablet, dough.code)
  await page.getByRole('button', { name: 'It is lost: take it out' }).waitFor()
  valueOf(
    await moveBatch.call(desk, { batchId: dough.batchId, seenRevision: 2, to: 'set_aside', why: 'The tray fell' }),
  )
  await expect(page.getByRole('heading', { name: `Dough ${dough.code}: set aside` })).toBeVisible()
  const go = page.getByRole('button', { name: 'Bake it again' })
  await context.route('**/api/v1/station/floor', (route) => route.abort())
  valueOf(await undoMove.call(desk, { batchId: dough.batchId, seenRevision: 3 }))
  await tap(go)
  await expect(page.getByText(/is neither lost nor set aside nor left unbaked/)).toBeVisible()
  expect(await codesOf(app, bakery)).toHaveLength(2)
  expect(refusalOf(await undoMove.call(desk, { batchId: dough.batchId, seenRevision: 4 }))).toBe('nothing-to-undo')
  await context.close()
})

test('two doughs that wait exchange their places for a reason, once, and every screen of it fits', async ({
  app,
  bakery,
  browser,
}) => {
  test.setTimeout(120_000)
  const { code, dough, trial } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  await noteLost(tablet, dough.code)
  await page.getByRole('button', { name: 'Set it aside' }).waitFor()
  await expectFit(page, 'dough with a cause')
  await tap(page.getByRole('button', { name: 'It is lost: take it out' }))
  await page.getByRole('button', { name: 'Bake it again' }).waitFor()
  await expectFit(page, 'out')
  await tap(page.getByRole('button', { name: 'Bake it again' }))
  await page.getByText(/^It is baked again as batch/).waitFor()
  await tap(page.getByRole('button', { name: 'All doughs' }))
  await page.getByRole('button', { name: 'Exchange places' }).waitFor()
  await expectFit(page, 'doughs with one that is out')
  const made = (await codesOf(app, bakery)).at(-1)!
  const waits = trial.batches[1]!.code
  await tap(page.getByRole('button', { name: 'Exchange places' }))
  await expect(page.getByRole('button', { name: 'The oven is not free' })).toBeDisabled()
  await tap(page.getByRole('button', { name: `Dough ${made}, place 3` }))
  await expectFit(page, 'exchange')
  await tap(page.getByRole('button', { name: 'The oven is not free' }))
  await expect(page.getByRole('button', { name: `Begin dough ${made}` })).toBeVisible()
  await expect(page.getByText(`Then: ${waits}`)).toBeVisible()
  const { rows } = await app.look.query(`SELECT kind, why FROM repair WHERE bakery_id = $1 ORDER BY number`, [
    bakery.bakeryId,
  ])
  expect(rows).toEqual([
    { kind: 'bake_again', why: null },
    { kind: 'swap', why: 'The oven is not free' },
  ])
  expect(tablet.faults).toEqual([])
  await context.close()
})

test('a tablet that fetched its doughs before repairs were told goes on with them without a network', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, dough, trial } = await readyToRead(bakery)
  const before = await openTablet(browser, app.url)
  await enrolAndLogOn(before, code)
  const rows = await readStore(before.page)
  const storageState = await before.context.storageState()
  await before.context.close()
  const floor = (rows.kept?.find(({ name }) => name === 'floor')?.value as { value: Record<string, unknown> }).value
  delete floor.out
  for (const each of floor.doughs as Record<string, unknown>[]) delete each.revision
  for (const each of floor.next as Record<string, unknown>[]) {
    delete each.turn
    delete each.after
  }

  const context = await browser.newContext({ baseURL: app.url, hasTouch: true, storageState })
  await context.route('**/api/v1/**', (route) => route.abort())
  const tablet = await tabletIn(context)
  const { page, tap } = tablet
  await page.goto('/icon.svg')
  await putFormerStore(page, rows, 11)
  await page.goto('/station')
  const next = page.getByRole('button', { name: `Begin dough ${trial.batches[1]!.code}` })
  await next.waitFor()
  await expect(page.getByRole('button', { name: 'Exchange places' })).toHaveCount(0)
  await tap(page.getByRole('button', { name: new RegExp(`^${dough.code}`) }))
  await tap(page.getByRole('button', { name: 'Something went wrong' }))
  await tap(page.getByRole('button', { name: 'The dough is lost' }))
  await expect(page.getByRole('button', { name: 'It is lost: take it out' })).toBeDisabled()
  await context.unroute('**/api/v1/**')
  await page.clock.fastForward(61_000)
  await tap(page.getByRole('button', { name: 'It is lost: take it out' }))
  await expect(page.getByRole('button', { name: 'Bake it again' })).toBeVisible()
  expect([...before.faults, ...tablet.faults]).toEqual([])
  await context.close()
})
