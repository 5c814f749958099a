import { db } from '../../lib/db/client'
import { expect, test } from '../support/app'
import { fromCamera } from '../support/made-pictures'
import { receiveLots } from '../support/receive-lots'
import { givePin, testPin } from '../support/stations'
import { enrolAndLogOn, keepNumber, logOn, openTablet, readyToRead, type Tablet, typePin } from '../support/tablet'

async function openFirstLine({ page, tap }: Tablet, code: string): Promise<void> {
  await tap(page.getByRole('button', { name: new RegExp(`^${code}`) }))
  await tap(page.getByRole('button', { name: 'Open the weights' }))
  await tap(page.getByRole('button', { name: /^Next: Wheat flour/ }))
}

test('a lot that nobody wrote down is typed and photographed without a network, and confirmed at the desk', async ({
  app,
  as,
  bakery,
  browser,
}) => {
  test.setTimeout(120_000)
  const { code, trial } = await readyToRead(bakery)
  const [dough, second] = trial.batches
  await receiveLots(bakery, 'Wheat flour', [{ code: 'F-1' }])
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  await page.evaluate(() => navigator.serviceWorker.ready)
  await openFirstLine(tablet, dough!.code)
  await context.setOffline(true)

  // As a scanner types it.
  await tap(page.getByRole('button', { name: 'Say the lot' }))
  await page.keyboard.type('x'.repeat(61))
  await page.keyboard.press('Enter')
  await expect(page.getByText('This is longer than a lot’s code.')).toBeVisible()
  await expect(page.getByRole('button', { name: /^Weigh from/ })).toHaveCount(0)
  await page.keyboard.type('Mill 9/b')
  await page.keyboard.press('Enter')
  await expect(page.getByText(/^No lot Mill 9\/b of Wheat flour/)).toBeVisible()
  await tap(page.getByRole('button', { name: 'Weigh from lot Mill 9/b' }))
  await expect(page.getByText('From lot Mill 9/b')).toBeVisible()
  await expect(page.getByText('Nobody has written down lot Mill 9/b yet. The head baker confirms it.')).toBeVisible()

  await tap(page.getByRole('button', { name: 'Photo of its label' }))
  await expect(page.getByRole('heading', { name: /^Label of lot Mill 9\/b, Wheat flour/ })).toBeVisible()
  const buffer = Buffer.from(await fromCamera())
  await page.getByLabel('Open the camera').setInputFiles({ name: 'label.jpg', mimeType: 'image/jpeg', buffer })
  await expect(page.getByText('From lot Mill 9/b')).toBeVisible()
  await page.reload()
  await expect(page.getByRole('button', { name: 'One more photo of its label' })).toBeVisible()
  await keepNumber(tablet, '1163.6')
  await tap(page.getByRole('button', { name: 'All lines' }))
  await expect(page.getByRole('button', { name: /^Wheat flour/ })).toContainText('from Mill 9/b, to confirm')

  await context.setOffline(false)
  await page.clock.fastForward(61_000)
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  // The photo of a label is none of the dough's.
  await tap(page.getByRole('button', { name: 'Back to the dough' }))
  await expect(page.getByRole('heading', { name: 'Photos taken here' })).toHaveCount(0)

  // At the next dough it is a tap away.
  await tap(page.getByRole('button', { name: 'All doughs' }))
  await tap(page.getByRole('button', { name: `Begin dough ${second!.code}` }))
  await tap(page.getByRole('button', { name: 'Open the weights' }))
  await tap(page.getByRole('button', { name: /^Next: Wheat flour/ }))
  await tap(page.getByRole('button', { name: 'Lot Mill 9/b, to confirm, as last time' }))
  await keepNumber(tablet, '1163.6')
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  expect(await db().lot.count({ where: { bakeryId: bakery.bakeryId, code: 'Mill 9/b' } })).toBe(1)

  const head = await as(bakery.head)
  await head.goto('/')
  const waits = head.getByRole('region', { name: 'Waits for you' })
  await expect(waits.getByText('One lot of the bench is to be confirmed')).toBeVisible()
  await waits.getByRole('link', { name: 'Lot Mill 9/b' }).click()
  const toConfirm = head.getByRole('region', { name: 'Lots to confirm' })
  await expect(toConfirm).toContainText(/Esi, .*, at Bench/)
  const label = toConfirm.getByRole('img', { name: 'Photo 1 of the label of lot Mill 9/b' })
  await expect.poll(() => label.evaluate((img: HTMLImageElement) => img.naturalWidth)).toBeGreaterThan(0)
  const form = head.getByRole('region', { name: 'Confirm a lot' })
  await form.getByLabel('Which lot').selectOption('Mill 9/b')
  await form.getByLabel('Received on').fill('2026-02-02')
  await form.getByLabel('Best before').fill('2030-01-31')
  await form.getByRole('button', { name: 'Confirm the lot' }).click()
  const lots = head.getByRole('region', { name: 'Lots', exact: true })
  await expect(lots.getByRole('row', { name: /Mill 9\/b/ })).toContainText('Confirmed: Henk')
  await expect(head.getByRole('region', { name: 'Lots to confirm' })).toHaveCount(0)
  await head.goto('/')
  await expect(waits.getByText('2 doughs are under way')).toBeVisible()
  await expect(waits.getByText('One lot of the bench is to be confirmed')).toHaveCount(0)
  expect(tablet.faults).toEqual([])
  await context.close()
})

test('a lot is refused at once where nothing is said of its allergens, and by the book where the tablet did not know', async ({
  app,
  bakery,
  browser,
}) => {
  test.setTimeout(120_000)
  const { code, dough } = await readyToRead(bakery)
  await givePin(bakery.late, testPin, new Date())
  const where = { bakeryId: bakery.bakeryId, labelName: 'Wheat flour' }
  const unsaid = { allergens: [], allergensCheckedAt: null }
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  await openFirstLine(tablet, dough.code)
  await tap(page.getByRole('button', { name: 'Say the lot' }))
  await page.keyboard.type('F-1')
  await page.keyboard.press('Enter')
  await tap(page.getByRole('button', { name: 'Weigh from lot F-1' }))
  // Whose label is to be photographed nobody else is shown, who has not opened the weights.
  await tap(page.getByRole('button', { name: 'Photo of its label' }))
  const label = page.getByRole('heading', { name: /^Label of lot F-1/ })
  await label.waitFor()
  await tap(page.getByRole('button', { name: 'Log off' }))
  await tap(page.getByRole('button', { name: /^Lars/ }))
  await typePin(tablet)
  await page.getByText('On it: Lars').waitFor()
  await expect(label).toHaveCount(0)
  await expect(page.getByText('F-1')).toHaveCount(0)
  await tap(page.getByRole('button', { name: 'Log off' }))
  await logOn(tablet)
  await label.waitFor()
  await tap(page.getByRole('button', { name: 'Back', exact: true }))
  await expect(page.getByText('From lot F-1')).toBeVisible()
  await db().ingredient.updateMany({ where, data: unsaid })
  await keepNumber(tablet, '1163.6')
  await expect(page.getByText('1 needs attention')).toBeVisible()
  await tap(page.getByRole('button', { name: 'Kept here' }))
  await expect(page.getByText(/^Nothing is said of the allergens of/)).toBeVisible()
  expect(await db().lot.count({ where: { bakeryId: bakery.bakeryId } })).toBe(0)
  await tap(page.getByRole('button', { name: 'Back', exact: true }))
  // Fetched again, the tablet knows it.
  await page.reload()
  await tap(page.getByRole('button', { name: 'All lines' }))
  await page.clock.fastForward(61_000)
  await expect(async () => {
    await tap(page.getByRole('button', { name: /^Wheat flour/ }))
    await tap(page.getByRole('button', { name: 'Say the lot' }))
    await expect(page.getByText(/^Nothing is said of the allergens of Wheat flour/)).toBeVisible({ timeout: 1000 })
  }).toPass()
  await expect(page.getByLabel('Code of the lot')).toHaveCount(0)
  expect(tablet.faults).toEqual([])
  await context.close()
})
