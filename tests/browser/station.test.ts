import { expect, test, type App } from '../support/app'
import { callerOf, valueOf } from '../support/bakery'
import { testPin } from '../support/stations'
import { enrolAndLogOn, keepNumber, logOn, openPlace, openTablet, readyToRead, untilDraft } from '../support/tablet'
import { withdrawStation } from '../../lib/kitchen/stations/withdraw-station'

async function readingsOf(app: App, batchId: string) {
  const { rows } = await app.look.query<{ value: string; person: string }>(
    `SELECT value_entered AS value, person.name AS person FROM reading
     JOIN person ON person.bakery_id = reading.bakery_id AND person.id = reading.person_id
     WHERE batch_id = $1 ORDER BY received_at`,
    [batchId],
  )
  return rows
}

test('a reading that is kept without a network outlives a reload and reaches the book once', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, dough, trial } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  await page.evaluate(() => navigator.serviceWorker.ready)
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  await page.getByRole('button', { name: new RegExp(`^${dough.code}`) }).waitFor()

  await context.setOffline(true)
  await openPlace(tablet, dough.code, 'Dough temperature', 'Whole dough')
  await keepNumber(tablet, '26.4')
  await expect(page.getByText('1 on this tablet, not sent yet')).toBeVisible()
  await expect(page.getByText('Offline')).toBeVisible()
  await page.reload()
  await expect(page.getByText('1 on this tablet, not sent yet')).toBeVisible()
  await expect(page.getByText('On it: Esi')).toBeVisible()
  await expect(page.locator('.stood').filter({ hasText: '26.4' })).toContainText('on this tablet')
  expect(await readingsOf(app, dough.batchId)).toEqual([])

  // A half-typed number is there after a reload, at its place.
  await tap(page.locator('section').filter({ hasText: 'Water added' }).getByRole('button', { name: 'Whole dough' }))
  await page.clock.fastForward(700)
  await page.getByRole('button', { name: '8', exact: true }).tap()
  await page.getByRole('button', { name: '1', exact: true }).tap()
  await expect(page.locator('.typed')).toContainText('81')
  await untilDraft(page, '81')
  await page.reload()
  await expect(page.locator('.typed')).toContainText('81')

  // What the network brings first is a page of somebody else's, and an answer that gets lost.
  let answers = 0
  await context.route('**/api/v1/entries', async (route) => {
    answers += 1
    if (answers === 1)
      return route.fulfill({ status: 200, contentType: 'text/html', body: '<h1>Welcome to our hotel</h1>' })
    if (answers > 2) return route.continue()
    await route.fetch()
    return route.abort()
  })
  await context.setOffline(false)
  await expect(async () => {
    await page.clock.fastForward(61_000)
    await expect(page.getByText('Everything is in the book')).toBeVisible({ timeout: 1_000 })
  }).toPass()
  expect(answers).toBeGreaterThan(2)
  expect(await readingsOf(app, dough.batchId)).toEqual([{ value: '26.4', person: 'Esi' }])
  await tap(page.getByRole('button', { name: 'Kept here' }))
  await expect(page.locator('.lying')).toContainText('in the book')

  // Nothing on the tablet tells a PIN, a cost or which dough is which, and no answer of the API is in a cache.
  const lies = await page.evaluate(async () => {
    const texts: string[] = []
    const addresses: string[] = []
    for (const name of await caches.keys())
      for (const request of await (await caches.open(name)).keys()) addresses.push(new URL(request.url).pathname)
    for (const { name = '' } of await indexedDB.databases()) {
      const database = await new Promise<IDBDatabase>((resolve, reject) => {
        const opening = indexedDB.open(name)
        opening.onsuccess = () => resolve(opening.result)
        opening.onerror = () => reject(new Error(name))
      })
      for (const store of database.objectStoreNames) {
        const all = database.transaction(store).objectStore(store).getAll()
        await new Promise((resolve) => (all.onsuccess = resolve))
        texts.push(JSON.stringify(all.result))
      }
      database.close()
    }
    return { text: texts.join('\n'), addresses, local: localStorage.length + sessionStorage.length }
  })
  expect(lies.addresses).toContain('/station')
  expect(lies.addresses.filter((address) => address !== '/station' && !address.startsWith('/station/files/'))).toEqual(
    [],
  )
  expect(lies.local).toBe(0)
  expect(lies.text).toContain(dough.batchId)
  for (const secret of [testPin, ...trial.armIds, 'milk powder', 'Milk powder', 'Control', 'massG', 'rice', 'cost'])
    expect(lies.text, secret).not.toContain(secret)
  expect(tablet.faults).toEqual([])
  await context.close()
})

test('mashed keys make one entry, an odd number is asked about, and a withdrawn tablet keeps what lies on it', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, dough, stationId } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url, { width: 375, height: 812 })
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  await page.evaluate(() => navigator.serviceWorker.ready)
  await openPlace(tablet, dough.code, 'Dough temperature', 'Whole dough')
  await keepNumber(tablet, '99')
  await expect(page.getByText('99 °C is outside what is usual here')).toBeVisible()
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  await tap(page.getByRole('button', { name: 'Change it' }))
  await page.clock.fastForward(700)
  for (let digits = 2; digits > 0; digits--) {
    await page.clock.fastForward(200)
    await page.getByRole('button', { name: 'Delete the last digit' }).tap()
  }
  for (const digit of '25') await page.getByRole('button', { name: digit, exact: true }).tap()
  // Twenty clicks in one go: nobody's finger is faster.
  await page.clock.fastForward(700)
  await page.getByRole('button', { name: /^Keep 25/ }).evaluate((button: HTMLButtonElement) => {
    for (let at = 0; at < 20; at++) button.click()
  })
  await expect(page.locator('.stood').filter({ hasText: '25' })).toContainText('in the book')
  expect(await readingsOf(app, dough.batchId)).toEqual([{ value: '25', person: 'Esi' }])

  await context.setOffline(true)
  await tap(page.locator('section').filter({ hasText: 'Water added' }).getByRole('button', { name: 'Whole dough' }))
  await keepNumber(tablet, '812')
  await expect(page.getByText('1 on this tablet, not sent yet')).toBeVisible()
  valueOf(await withdrawStation.call(callerOf(bakery.owner.sessionSecret, new Date()), { stationId }))
  await context.setOffline(false)
  await page.clock.fastForward(61_000)
  await expect(page.getByRole('heading', { name: 'This tablet was withdrawn' })).toBeVisible()
  await expect(page.getByText('One reading that was not sent stays on it.')).toBeVisible()
  await page.reload()
  await expect(page.getByText('1 on this tablet, not sent yet')).toBeVisible()
  await tap(page.getByRole('button', { name: 'Kept here' }))
  await expect(page.locator('.lying').filter({ hasText: '812' })).toContainText('on this tablet')
  expect(tablet.faults).toEqual([])
  await context.close()
})

test('ten minutes without a touch leave nobody on it, warned before; a tap stays, and a name goes on', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, dough } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  await page.clock.fastForward(9 * 60_000 + 5_000)
  await tap(page.getByRole('button', { name: 'I am here' }))
  await expect(page.getByRole('dialog')).toBeHidden()
  // The dialog is all that the finger has touched: nothing below it was opened, let alone begun.
  await expect(page.getByRole('heading', { name: 'Doughs' })).toBeVisible()
  await page.clock.fastForward(10 * 60_000 + 5_000)
  await expect(page.getByText('Nobody is on it')).toBeVisible()
  await tap(page.getByRole('button', { name: /^Esi/ }))
  await expect(page.getByText('On it: Esi')).toBeVisible()
  // A tablet that slept has noticed nothing of the time: what wakes it does nothing as whoever was on it.
  const row = page.getByRole('button', { name: new RegExp(`^${dough.code}`) })
  await row.waitFor()
  await page.clock.fastForward(700)
  // In one go: between the time and the touch the page may look at the clock by itself, and then there is nothing to touch.
  await row.evaluate((button: HTMLButtonElement) => {
    const awake = Date.now
    Date.now = () => awake() + 11 * 60_000
    button.click()
  })
  await expect(page.getByText('Nobody is on it')).toBeVisible()
  await tap(page.getByRole('button', { name: /^Esi/ }))
  await expect(row).toBeVisible()
  await tap(page.getByRole('button', { name: 'Log off' }))
  await tap(page.getByRole('button', { name: /^Esi/ }))
  await expect(page.getByRole('heading', { name: 'PIN of Esi' })).toBeVisible()
  expect(tablet.faults).toEqual([])
  await context.close()
})

test('a tablet lets people go after the time that the bakery sets, warned a minute before', async ({
  app,
  as,
  bakery,
  browser,
}) => {
  const desk = await as(bakery.owner)
  await desk.goto('/team/settings')
  const idle = desk.getByLabel(/^A tablet lets people go after/)
  await expect(idle).toHaveValue('10')
  await idle.fill('1')
  await desk.getByRole('button', { name: 'Keep the settings' }).click()
  await expect(idle).toHaveAttribute('aria-invalid', 'true')
  await idle.fill('3')
  await desk.getByLabel(/^A tablet asks the PIN again after/).fill('8')
  await desk.getByRole('button', { name: 'Keep the settings' }).click()
  await expect(desk.getByText('The settings are kept.')).toBeVisible()

  const { code } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  await page.clock.fastForward(2 * 60_000 + 5_000)
  await tap(page.getByRole('button', { name: 'I am here' }))
  await page.clock.fastForward(60_000)
  await expect(page.getByRole('dialog')).toBeHidden()
  await expect(page.getByText('On it: Esi')).toBeVisible()
  await page.clock.fastForward(2 * 60_000)
  await expect(page.getByText('Nobody is on it')).toBeVisible()
  // The next read brings another time.
  await desk.reload()
  await idle.fill('20')
  await desk.getByRole('button', { name: 'Keep the settings' }).click()
  await expect(desk.getByText('The settings are kept.')).toBeVisible()
  await tap(page.getByRole('button', { name: /^Esi/ }))
  await expect(page.getByText('On it: Esi')).toBeVisible()
  await page.getByText(/^As fetched at/).waitFor()
  await expect
    .poll(() =>
      page.evaluate(
        () =>
          new Promise((resolve, reject) => {
            const opening = indexedDB.open('evendough-station')
            opening.onerror = () => reject(new Error('the store did not open'))
            opening.onsuccess = () => {
              const asked = opening.result.transaction('kept').objectStore('kept').get('station')
              asked.onsuccess = () => {
                opening.result.close()
                resolve((asked.result as { value: { bakery: { stationIdleMin: number } } }).value.bakery.stationIdleMin)
              }
            }
          }),
      ),
    )
    .toBe(20)
  await page.clock.fastForward(15 * 60_000)
  await expect(page.getByText('On it: Esi')).toBeVisible()
  expect(tablet.faults).toEqual([])
  await context.close()
})

test('two pages of one tablet keep and send together, and each entry once', async ({ app, bakery, browser }) => {
  const { code, dough } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, context } = tablet
  await enrolAndLogOn(tablet, code)
  await context.setOffline(true)
  await openPlace(tablet, dough.code, 'Dough temperature', 'Whole dough')
  await keepNumber(tablet, '26')
  await expect(page.getByText('1 on this tablet, not sent yet')).toBeVisible()
  // Listened for before there is a network: the first page sends as soon as there is one.
  const answered: string[] = []
  context.on('response', (response) => {
    if (response.url().endsWith('/api/v1/entries')) answered.push(response.url())
  })
  await context.setOffline(false)
  const other = await context.newPage()
  await other.goto('/station')
  await expect(other.getByText('Everything is in the book')).toBeVisible()
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  expect(answered).toHaveLength(1)
  expect(await readingsOf(app, dough.batchId)).toEqual([{ value: '26', person: 'Esi' }])
  expect(tablet.faults).toEqual([])
  await context.close()
})

test('what the book refuses needs attention, is shown with its words, and holds nothing else up', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, dough, trial } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  await context.setOffline(true)
  await openPlace(tablet, dough.code, 'Dough temperature', 'Whole dough')
  await keepNumber(tablet, '26')
  await tap(page.locator('section').filter({ hasText: 'Water added' }).getByRole('button', { name: 'Whole dough' }))
  await keepNumber(tablet, '812')
  await expect(page.getByText('2 on this tablet, not sent yet')).toBeVisible()
  // What is usual has become narrower since the tablet asked.
  await app.look.query('UPDATE measure SET plausible_most = 25 WHERE id = $1', [trial.measures['dough-temp']])
  await context.setOffline(false)
  await page.clock.fastForward(61_000)
  await expect(page.getByText('1 needs attention')).toBeVisible()
  expect(await readingsOf(app, dough.batchId)).toEqual([{ value: '812', person: 'Esi' }])
  await tap(page.getByRole('button', { name: 'Kept here' }))
  await expect(page.locator('.lying').filter({ hasText: 'needs attention' })).toContainText('25')
  await tap(page.getByRole('button', { name: 'It is right: send it' }))
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  expect((await readingsOf(app, dough.batchId)).map(({ value }) => value)).toEqual(['812', '26'])
  expect(tablet.faults).toEqual([])
  await context.close()
})

test('what waits when somebody’s time is over is sent under their next PIN, and nobody else is asked for it', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, dough } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, context } = tablet
  await enrolAndLogOn(tablet, code)
  await context.setOffline(true)
  await openPlace(tablet, dough.code, 'Dough temperature', 'Whole dough')
  await keepNumber(tablet, '26')
  await expect(page.getByText('1 on this tablet, not sent yet')).toBeVisible()
  await app.look.query('UPDATE station_shift SET ended_at = now() WHERE person_id = $1', [bakery.early.personId])
  await context.setOffline(false)
  await page.clock.fastForward(61_000)
  await expect(page.getByText('What Esi kept waits until they log on again.')).toBeVisible()
  await expect(page.getByText('1 on this tablet, not sent yet')).toBeVisible()
  expect(await readingsOf(app, dough.batchId)).toEqual([])
  await logOn(tablet)
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  expect(await readingsOf(app, dough.batchId)).toEqual([{ value: '26', person: 'Esi' }])
  expect(tablet.faults).toEqual([])
  await context.close()
})
