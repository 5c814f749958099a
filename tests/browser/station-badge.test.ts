import { withdrawBadge } from '../../lib/kitchen/people/withdraw-badge'
import { qrCode } from '../../lib/kitchen/stations/qr-code'
import { expect, test } from '../support/app'
import { callerOf, valueOf } from '../support/bakery'
import { expectFit, screenSizes } from '../support/expect-fit'
import { camerasOf, noteCameras, openFakeCamera } from '../support/fake-camera'
import { badgeOf } from '../support/stations'
import { enrolAndLogOn, keepNumber, openPlace, openTablet, readyToRead, typePin } from '../support/tablet'
import type { Locator, Page } from 'playwright/test'

/** The squares of a code as the page has drawn them, edge and all. */
async function squaresOf(picture: Locator): Promise<boolean[][]> {
  const size = Number((await picture.getAttribute('viewBox'))?.split(' ')[2])
  const drawn = (await picture.locator('path').getAttribute('d')) ?? ''
  const dark = new Set([...drawn.matchAll(/M(\d+) (\d+)h1v1h-1z/g)].map(([, x, y]) => `${x} ${y}`))
  return Array.from({ length: size }, (_, y) => Array.from({ length: size }, (_, x) => dark.has(`${x} ${y}`)))
}

/** A hand scanner's keys, which come in one go however busy the machine is. */
async function scan(page: Page, text: string): Promise<void> {
  await page.clock.pauseAt((await page.evaluate(() => Date.now())) + 1_000)
  await page.keyboard.type(text)
  await page.keyboard.press('Enter')
  await page.clock.resume()
}

/** All that lies on the tablet, as text. */
function lying(page: Page): Promise<string> {
  return page.evaluate(async () => {
    const texts = [JSON.stringify(localStorage), JSON.stringify(sessionStorage), location.href]
    for (const { name = '' } of await indexedDB.databases()) {
      const database = await new Promise<IDBDatabase>((resolve, reject) => {
        const opening = indexedDB.open(name)
        opening.onsuccess = () => resolve(opening.result)
        opening.onerror = () => reject(new Error('the store did not open'))
      })
      for (const store of database.objectStoreNames)
        texts.push(
          await new Promise<string>((resolve) => {
            const asked = database.transaction(store).objectStore(store).getAll()
            asked.onsuccess = () => resolve(JSON.stringify(asked.result))
          }),
        )
      database.close()
    }
    return texts.join(' ')
  })
}

test('the desk makes a badge, which is printed alone and leads in by the camera; withdrawn, it does not', async ({
  app,
  as,
  bakery,
}) => {
  test.setTimeout(120_000)
  const { code } = await readyToRead(bakery)
  const desk = await as(bakery.head)
  await desk.goto(`/team/people/${bakery.early.personId}`)
  const section = desk.locator('#badge')
  await section.getByLabel('Your own password').fill(bakery.head.password)
  await section.getByRole('button', { name: 'Make the badge' }).click()
  const picture = desk.getByRole('img', { name: 'Code of the badge of Esi' })
  await expect(picture).toBeVisible()
  await expect(section.getByText(/^Made on .* by Henk\.$/)).toBeVisible()
  const badge = await squaresOf(picture)
  // The print is the card, and nothing of the page around it.
  await desk.emulateMedia({ media: 'print' })
  await expect(picture).toBeVisible()
  await expect(desk.getByText('Lost? Tell the head baker.')).toBeVisible()
  for (const other of [
    section.getByRole('heading'),
    desk.getByRole('heading', { level: 1 }),
    section.getByRole('button'),
  ])
    for (const each of await other.all()) await expect(each).toBeHidden()
  await expect(desk.getByText(/^Shown only now/)).toBeHidden()
  await desk.emulateMedia({ media: null })
  await desk.reload()
  await expect(section.getByText(/^Made on/)).toBeVisible()
  await expect(picture).toHaveCount(0)

  const camera = await openFakeCamera()
  const tablet = await openTablet(camera.browser, app.url)
  const { page, tap } = tablet
  await noteCameras(page)
  await enrolAndLogOn(tablet, code)
  await tap(page.getByRole('button', { name: 'Log off' }))
  const show = () => tap(page.getByRole('button', { name: 'Show your badge' }))
  camera.see(badge)
  await show()
  await expect(page.getByText('On it: Esi')).toBeVisible()
  await expect.poll(() => camerasOf(page)).toEqual({ had: 1, has: 0 })

  await tap(page.getByRole('button', { name: 'Log off' }))
  await section.getByRole('button', { name: 'Withdraw the badge' }).click()
  await expect(section.getByText('There is none yet.')).toBeVisible()
  camera.see(badge)
  await show()
  await expect(page.getByText(/^This badge does not hold any more/)).toBeVisible()
  await expect(page.getByText('Nobody is on it')).toBeVisible()
  expect(tablet.faults).toEqual([])
  await camera.close()
})

test('what is no badge is told, and the camera closes by itself, because nobody is there to close it', async ({
  app,
  bakery,
}) => {
  const { code } = await readyToRead(bakery)
  const camera = await openFakeCamera()
  const tablet = await openTablet(camera.browser, app.url)
  const { page, tap } = tablet
  await noteCameras(page)
  await enrolAndLogOn(tablet, code)
  await tap(page.getByRole('button', { name: 'Log off' }))
  camera.see(qrCode('https://elsewhere.example'))
  await tap(page.getByRole('button', { name: 'Show your badge' }))
  await expect(page.getByText('This is no badge.')).toBeVisible()
  await page.clock.fastForward(61_000)
  await expect(page.getByRole('heading', { name: 'Who is here?' })).toBeVisible()
  await expect.poll(() => camerasOf(page)).toEqual({ had: 1, has: 0 })
  expect(tablet.faults).toEqual([])
  await camera.close()
})

test('the names with the way to a badge, and its screen, fit and can be tapped', async ({ app, bakery, browser }) => {
  const { code } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  await tap(page.getByRole('button', { name: 'Log off' }))
  await page.getByRole('button', { name: 'Show your badge' }).waitFor()
  await expectFit(page, 'names and badge', screenSizes.slice(1, 3))
  await tap(page.getByRole('button', { name: 'Show your badge' }))
  await expect(page.getByText(/Log on by your PIN|log on by your PIN/)).toBeVisible()
  await expectFit(page, 'badge', screenSizes.slice(1, 3))
  await tap(page.getByRole('button', { name: 'Back to the names' }))
  await expect(page.getByRole('heading', { name: 'Who is here?' })).toBeVisible()
  expect(tablet.faults).toEqual([])
  await context.close()
})

test('a hand scanner reads a badge where the names are, and nothing of it stays on the tablet', async ({
  app,
  bakery,
  browser,
}) => {
  const { code } = await readyToRead(bakery)
  const badge = await badgeOf(bakery.early, new Date())
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  // Shown where doughs are opened it is told, and not shown.
  await scan(page, badge)
  await expect(page.getByText('This is somebody’s badge. It is shown where the names are.')).toBeVisible()

  await tap(page.getByRole('button', { name: 'Log off' }))
  await expect(page.getByRole('heading', { name: 'Who is here?' })).toBeVisible()
  await context.setOffline(true)
  await scan(page, badge)
  await expect(page.getByText('A badge can only be checked while the book answers.')).toBeVisible()
  await context.setOffline(false)
  await scan(page, '307-B')
  await expect(page.getByText('This is no badge.')).toBeVisible()
  await scan(page, badge)
  await expect(page.getByText('On it: Esi')).toBeVisible()
  expect(await lying(page)).not.toContain(badge.slice(9))
  expect(tablet.faults).toEqual([])
  await context.close()
})

test('what wants the PIN wants it of whoever came in by a badge; withdrawn, it takes nobody along who typed their PIN', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, dough } = await readyToRead(bakery)
  const badge = await badgeOf(bakery.early, new Date())
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  await openPlace(tablet, dough.code, 'Dough temperature', 'Whole dough')
  await keepNumber(tablet, '26.4')
  await expect(page.locator('.stood').filter({ hasText: '26.4' })).toContainText('in the book')
  await tap(page.getByRole('button', { name: 'All doughs' }))
  await tap(page.getByRole('button', { name: 'Log off' }))
  // By both clocks what was read is nobody's slip any more.
  await app.look.query('ALTER TABLE reading DISABLE TRIGGER USER')
  await app.look.query("UPDATE reading SET received_at = received_at - interval '11 minutes' WHERE batch_id = $1", [
    dough.batchId,
  ])
  await app.look.query('ALTER TABLE reading ENABLE TRIGGER USER')
  await page.clock.fastForward(11 * 60_000)
  await scan(page, badge)
  await expect(page.getByText('On it: Esi')).toBeVisible()
  await tap(page.getByRole('button', { name: new RegExp(`^${dough.code}`) }))
  await tap(page.locator('.stood').filter({ hasText: '26.4' }).getByRole('button'))
  await tap(page.getByRole('button', { name: 'Typed wrong' }))
  await keepNumber(tablet, '26.1')
  await expect(page.getByRole('heading', { name: 'PIN of Esi' })).toBeVisible()
  await typePin(tablet)
  await expect(page.locator('.stood').filter({ hasText: '26.1' })).toContainText('in the book')

  // Withdrawn, whoever is on it by the badge is off, and who typed their PIN stays.
  valueOf(
    await withdrawBadge.call(callerOf(bakery.head.sessionSecret, new Date()), { personId: bakery.early.personId }),
  )
  await page.clock.fastForward(61_000)
  await expect(page.getByText('On it: Esi')).toBeVisible()
  expect(tablet.faults).toEqual([])
  await context.close()
})
