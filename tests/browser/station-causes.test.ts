import { getBatch } from '../../lib/kitchen/shifts/get-batch'
import { expect, test } from '../support/app'
import { callerOf, valueOf } from '../support/bakery'
import { enrolAndLogOn, openTablet, readyToRead, untilDraft } from '../support/tablet'

test('what went wrong is noted in two taps without a network, and the desk reads it once that is back', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, dough } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, tap, context, faults } = tablet
  await enrolAndLogOn(tablet, code)
  await tap(page.getByRole('button', { name: new RegExp(`^${dough.code}`) }))
  await context.setOffline(true)
  await tap(page.getByRole('button', { name: 'Something went wrong' }))
  await tap(page.getByRole('button', { name: 'The dough is lost' }))
  await expect(page.getByText(/^Noted here: The dough is lost, Esi/)).toContainText('on this tablet')
  // What the plan still allows is offered, and what it needs is said.
  await expect(page.getByRole('button', { name: 'It is lost: take it out' })).toBeVisible()
  await expect(page.getByText(/^A dough is taken out in the book, so this needs the network/)).toBeVisible()
  await tap(page.getByRole('button', { name: 'Something went wrong' }))
  // What is half typed stays over a reload; a second finger's tap notes nothing twice.
  await page.getByLabel('Something else').fill('  Cre\u0300me on the floor ')
  await untilDraft(page, 'on the floor')
  await page.reload()
  await expect(page.getByLabel('Something else')).toHaveValue('  Cre\u0300me on the floor ')
  await tap(page.getByRole('button', { name: 'Note it' }))
  await expect(page.getByText('2 on this tablet, not sent yet')).toBeVisible()

  await context.setOffline(false)
  await page.clock.fastForward(60_000)
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  const { causes } = valueOf(
    await getBatch.call(callerOf(bakery.late.sessionSecret, new Date()), { batchId: dough.batchId }),
  )
  expect(causes.map(({ what, person }) => [what, person.name])).toEqual([
    ['The dough is lost', 'Esi'],
    ['Cr\u00e8me on the floor', 'Esi'],
  ])
  expect(faults).toEqual([])
  await context.close()
})
