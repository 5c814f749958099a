import { makeStation } from '../../lib/kitchen/stations/make-station'
import { expect, test, type App } from '../support/app'
import { makeApprovedTrial } from '../support/approved-trial'
import { callerOf, valueOf, type TestBakery } from '../support/bakery'
import { givePin, testPin } from '../support/stations'
import { enrolAndLogOn, logOn, openTablet } from '../support/tablet'

/** A tablet's code, and a trial of two mixing days of which nothing is begun. */
async function readyToBegin(bakery: TestBakery) {
  const now = new Date()
  const owner = callerOf(bakery.owner.sessionSecret, now)
  const { code } = valueOf(await makeStation.call(owner, { name: 'Bench' }))
  await givePin(bakery.early, testPin, now)
  const trial = await makeApprovedTrial(bakery, { days: 2, now })
  return { code, trial }
}

async function begunOf(app: App, bakery: TestBakery): Promise<string[]> {
  const { rows } = await app.look.query<{ code: string }>(
    `SELECT code FROM batch WHERE bakery_id = $1 AND begun_at IS NOT NULL ORDER BY begun_at`,
    [bakery.bakeryId],
  )
  return rows.map(({ code }) => code)
}

test('a dough is begun by two taps and the PIN, and a clean-down is signed before the one that wants it', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, trial } = await readyToBegin(bakery)
  const [first, second, third] = trial.batches.map((batch) => batch.code)
  const tablet = await openTablet(browser, app.url, { width: 375, height: 812 })
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  // Whoever wakes the tablet: a name, the PIN, the dough.
  await tap(page.getByRole('button', { name: 'Log off' }))
  await logOn(tablet)
  const go = page.getByRole('button', { name: `Begin dough ${first}` })
  await expect(go).toBeInViewport({ ratio: 1 })
  await tap(go)
  await expect(page.getByRole('heading', { name: `Dough ${first}` })).toBeVisible()
  expect(await begunOf(app, bakery)).toEqual([first])

  await tap(page.getByRole('button', { name: 'All doughs' }))
  await tap(page.getByRole('button', { name: `Begin dough ${second}` }))
  await tap(page.getByRole('button', { name: 'All doughs' }))
  const last = page.getByRole('button', { name: `Begin dough ${third}` })
  await expect(page.getByText('Clean down first.')).toBeVisible()
  await tap(last)
  await expect(page.getByRole('heading', { name: `Clean down before dough ${third}` })).toBeVisible()
  expect(await begunOf(app, bakery)).toEqual([first, second])
  await page.reload()
  await tap(page.getByRole('button', { name: `Cleaned down: begin dough ${third}` }))
  await expect(page.getByRole('heading', { name: `Dough ${third}`, exact: true })).toBeVisible()
  expect(await begunOf(app, bakery)).toEqual([first, second, third])
  const { rows } = await app.look.query<{ text: string }>(
    `SELECT entry_text AS text FROM audit_entry WHERE bakery_id = $1 AND action = 'shifts.begin-batch' ORDER BY number`,
    [bakery.bakeryId],
  )
  const entries = rows.map(({ text }) => JSON.parse(text) as { after: { cleanDown: string }; who: object })
  expect(entries.map(({ after }) => after.cleanDown)).toEqual(['not needed', 'not needed', 'done'])
  expect(entries[2]?.who).toMatchObject({ kind: 'station', name: 'Bench', person: { name: 'Esi' } })
  expect(tablet.faults).toEqual([])
  await context.close()
})

test('without the book nothing is begun and it is said; a lost answer and mashed taps begin one dough', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, trial } = await readyToBegin(bakery)
  const first = trial.batches[0]!.code
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  await page.evaluate(() => navigator.serviceWorker.ready)
  const go = page.getByRole('button', { name: `Begin dough ${first}` })
  await context.setOffline(true)
  await tap(go)
  await expect(page.getByText(`it is not certain that dough ${first} was begun`)).toBeVisible()
  await expect(page.getByText('Only the book knows which dough is next')).toBeVisible()
  expect(await begunOf(app, bakery)).toEqual([])

  // The book begins it, and its answer is lost; the page is loaded anew before somebody taps again.
  const named: (string | undefined)[] = []
  await context.route('**/api/v1/station/begin', async (route) => {
    named.push(route.request().headers()['evendough-once'])
    if (named.length > 1) return route.continue()
    await route.fetch()
    return route.abort()
  })
  await context.route('**/api/v1/station/floor', (route) => route.abort())
  await context.setOffline(false)
  await page.reload()
  await tap(go)
  await expect(page.getByText(`it is not certain that dough ${first} was begun`)).toBeVisible()
  expect(await begunOf(app, bakery)).toEqual([first])
  await page.reload()
  await page.clock.fastForward(700)
  await go.evaluate((button: HTMLButtonElement) => {
    for (let at = 0; at < 20; at++) button.click()
  })
  await expect.poll(() => named.length).toBe(2)
  await context.unroute('**/api/v1/station/floor')
  await page.clock.fastForward(61_000)
  await expect(page.getByRole('button', { name: new RegExp(`^${first}`) })).toBeVisible()
  expect(new Set(named).size).toBe(1)
  expect(await begunOf(app, bakery)).toEqual([first])
  const { rows } = await app.look.query(
    `SELECT 1 FROM audit_entry WHERE bakery_id = $1 AND action = 'shifts.begin-batch'`,
    [bakery.bakeryId],
  )
  expect(rows).toHaveLength(1)
  expect(tablet.faults).toEqual([])
  await context.close()
})

test('a dough that was begun by a slip is taken back within ten seconds, and not after', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, trial } = await readyToBegin(bakery)
  const first = trial.batches[0]!.code
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  const go = page.getByRole('button', { name: `Begin dough ${first}` })
  await tap(go)
  const back = page.getByRole('button', { name: 'Take it back: not begun' })
  // On a machine that is slow the book may be asked later than this, and says so in its words.
  await app.look.query('ALTER TABLE batch DISABLE TRIGGER USER')
  await back.waitFor()
  await app.look.query(`UPDATE batch SET moved_at = now() WHERE moved_from = 'waiting' AND bakery_id = $1`, [
    bakery.bakeryId,
  ])
  await app.look.query('ALTER TABLE batch ENABLE TRIGGER USER')
  await tap(back)
  await expect(go).toBeVisible()
  expect(await begunOf(app, bakery)).toEqual([])
  await tap(go)
  await back.waitFor()
  await page.clock.fastForward(10_500)
  await expect(back).toHaveCount(0)
  expect(await begunOf(app, bakery)).toEqual([first])
  expect(tablet.faults).toEqual([])
  await context.close()
})

test('who was faster at the desk is said, and the tablet goes on with what is next', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, trial } = await readyToBegin(bakery)
  const [first, second] = trial.batches
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  const go = page.getByRole('button', { name: `Begin dough ${first!.code}` })
  await go.waitFor()
  await app.look.query(`UPDATE batch SET state = 'weighing', begun_at = now(), revision = 2 WHERE id = $1`, [
    first!.batchId,
  ])
  await tap(go)
  await expect(page.getByText(`Somebody has begun dough ${first!.code} already.`)).toBeVisible()
  await expect(page.getByRole('button', { name: `Begin dough ${second!.code}` })).toBeVisible()
  await expect(page.getByRole('button', { name: new RegExp(`^${first!.code}`) })).toBeVisible()
  expect(await begunOf(app, bakery)).toEqual([first!.code])
  expect(tablet.faults).toEqual([])
  await context.close()
})
