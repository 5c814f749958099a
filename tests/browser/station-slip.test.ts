import { expect, test } from '../support/app'
import { enrolAndLogOn, keepNumber, openTablet, readyToRead } from '../support/tablet'

test('the code of a slip opens what is read of its piece, also without a network, and once', async ({
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

  await page.goto(`/station#${dough.batchId}.2`)
  await expect(page.getByRole('heading', { name: `Dough ${dough.code}, piece 2` })).toBeVisible()
  await expect(page.getByText(/^Contains /)).toBeVisible()
  await expect(page.getByRole('button', { name: /^Piece 1/ })).toHaveCount(0)
  await expect(page.getByRole('button', { name: /^Whole dough/ })).toHaveCount(0)
  await tap(page.locator('section').filter({ hasText: 'Loaf weight' }).getByRole('button', { name: 'Piece 2' }))
  await keepNumber(tablet, '412')
  await expect(page.getByText('1 on this tablet, not sent yet')).toBeVisible()
  await page.reload()
  expect(new URL(page.url()).hash).toBe('')
  await expect(page.getByRole('heading', { name: `Dough ${dough.code}, piece 2` })).toHaveCount(0)

  // Another slip while the page is open; its dough is a tap away.
  await page.goto(`/station#${dough.batchId}.3`)
  await expect(page.getByRole('heading', { name: `Dough ${dough.code}, piece 3` })).toBeVisible()
  await tap(page.getByRole('button', { name: 'The whole dough' }))
  await expect(page.getByRole('heading', { name: `Dough ${dough.code}`, exact: true })).toBeVisible()

  // A slip of a piece that there is not opens its dough, and one of no dough that is read here says so.
  await page.goto(`/station#${dough.batchId}.99`)
  await expect(page.getByRole('heading', { name: `Dough ${dough.code}`, exact: true })).toBeVisible()
  await page.goto(`/station#${dough.batchId.replace(/.$/, (last) => (last === '0' ? '1' : '0'))}.1`)
  await expect(page.getByText('This dough is not among those to read any more.')).toBeVisible()
  expect(tablet.faults).toEqual([])
  await context.close()
})

test('a slip that is scanned on what is no tablet leads to its dough at the desk', async ({
  app,
  as,
  bakery,
  expectNoise,
}) => {
  // What is no tablet is told so when it asks what is to be read.
  expectNoise(/401/)
  const { dough } = await readyToRead(bakery)
  const page = await as(bakery.early)
  await page.goto('/station')
  await expect(page.getByRole('button', { name: 'Open the dough at the desk' })).toHaveCount(0)
  await page.goto(`/station#${dough.batchId}.2`)
  await page.getByRole('button', { name: 'Open the dough at the desk' }).click()
  await expect(page).toHaveURL(`${app.url}/shift/${dough.batchId}`)
  await expect(page.getByRole('heading', { level: 1 })).toContainText(dough.code)
})
