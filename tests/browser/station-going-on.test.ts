import { expect, test } from '../support/app'
import { enrolAndLogOn, holdDisk, openPlace, openTablet, readyToRead, typeNumber } from '../support/tablet'

test('whoever taps on while something is being kept stays where they went', async ({ app, bakery, browser }) => {
  test.setTimeout(120_000)
  const { code, dough } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)

  await openPlace(tablet, dough.code, 'Loaf volume', 'Piece 1 not read yet')
  await typeNumber(tablet, '2100')
  let letGo = await holdDisk(page)
  await tap(page.getByRole('button', { name: /^Keep / }))
  await tap(page.getByRole('button', { name: 'Back to the dough' }))
  await letGo()
  await expect(page.getByRole('button', { name: /^Piece 1/ }).filter({ hasText: '2100 mL' })).toHaveCount(1)
  await expect(page.getByRole('heading', { name: `Dough ${dough.code}` })).toBeVisible()
  await expect(page.getByText('Everything is in the book')).toBeVisible()

  await tap(page.getByRole('button', { name: 'Open the weights' }))
  await tap(page.getByRole('button', { name: /^Next: Wheat flour/ }))
  letGo = await holdDisk(page)
  await tap(page.getByRole('button', { name: 'As planned' }))
  await tap(page.getByRole('button', { name: 'All lines' }))
  await letGo()
  await expect(page.getByRole('button', { name: /^Wheat flour/ })).toContainText('as planned')
  await expect(page.getByRole('heading', { name: `Weigh out dough ${dough.code}` })).toBeVisible()
  expect(tablet.faults).toEqual([])
  await context.close()
})
