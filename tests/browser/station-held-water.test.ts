import { callerOf, valueOf } from '../support/bakery'
import { expect, test } from '../support/app'
import { openDoughKey } from '../../lib/kitchen/shifts/open-dough-key'
import { expectFit } from '../support/expect-fit'
import { enrolAndLogOn, keepNumber, openTablet, readyToRead, typeNumber, untilDraft } from '../support/tablet'

test('water is held back and added while a dough is mixed, without a network, and the book keeps both with why', async ({
  app,
  as,
  bakery,
  browser,
}) => {
  test.setTimeout(180_000)
  const { code, dough } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  await page.evaluate(() => navigator.serviceWorker.ready)
  await tap(page.getByRole('button', { name: new RegExp(`^${dough.code}`) }))
  await tap(page.getByRole('button', { name: 'Open the weights' }))
  await expect(page.getByText('5 of 5 lines left')).toBeVisible()
  await tap(page.getByRole('button', { name: 'Back to the dough' }))
  // Before it was weighed there is none to hold back.
  await expect(page.getByRole('button', { name: 'Water held back or added' })).toHaveCount(0)
  await tap(page.getByRole('button', { name: /^Weigh out/ }))
  await expect(page.getByText(/^Line 1 of 5/)).toBeVisible()
  await tap(page.getByRole('button', { name: 'As planned' }))
  await expect(page.getByText(/^Line 2 of 5/)).toBeVisible()
  await context.setOffline(true)
  await keepNumber(tablet, '720')
  await expect(page.getByText(/^Line 3 of 5/)).toBeVisible()
  await tap(page.getByRole('button', { name: 'All lines' }))
  await tap(page.getByRole('button', { name: 'Back to the dough' }))

  await tap(page.getByRole('button', { name: 'Water held back or added' }))
  await tap(page.getByRole('button', { name: 'Water held back' }))
  await expect(page.getByText('In the dough so far: 720 g')).toBeVisible()
  await typeNumber(tablet, '720')
  await tap(page.getByRole('button', { name: /^Keep: / }))
  await expect(page.getByText(/^Only 720\sg of it is in the dough/)).toBeVisible()
  await expectFit(page, 'water held back')
  for (let digit = 0; digit < 3; digit++) await tap(page.getByRole('button', { name: 'Delete the last digit' }))
  await typeNumber(tablet, '30')
  await expect(page.getByText('Then in the dough: 690 g')).toBeVisible()
  await expect(page.getByText(/^That is further from the plan/)).toBeVisible()
  await untilDraft(page, '30')
  // Half typed it is there after a reload.
  await page.reload()
  await expect(page.getByText('Then in the dough: 690 g')).toBeVisible()
  await tap(page.getByRole('button', { name: /^Keep: 30\sg held back$/ }))
  await expect(page.getByText(/^Line 3 of 5/)).toBeVisible()

  await tap(page.getByRole('button', { name: 'Line before' }))
  await expect(page.getByText(/^Written: 690\.0\sg, Esi/)).toBeVisible()
  await tap(page.getByRole('button', { name: 'Water added' }))
  await typeNumber(tablet, '25.5')
  await expect(page.getByText('Then in the dough: 715.5 g')).toBeVisible()
  await expect(page.getByText(/^That is further from the plan/)).toHaveCount(0)
  await tap(page.getByRole('button', { name: /^Keep: 25\.5\sg added$/ }))
  await expect(page.getByText(/^Line 3 of 5/)).toBeVisible()
  await context.setOffline(false)
  await page.clock.fastForward(61_000)
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  const { rows } = await app.look.query(
    `SELECT mass_entered AS mass, reason FROM weighing
     JOIN ingredient ON ingredient.bakery_id = weighing.bakery_id AND ingredient.id = weighing.ingredient_id
     WHERE batch_id = $1 AND ingredient.kind = 'water' ORDER BY weighing.received_at, weighing.taken_at`,
    [dough.batchId],
  )
  expect(rows).toEqual([
    { mass: '720', reason: null },
    { mass: '690', reason: expect.stringMatching(/^Held back while mixing: 30\sg$/) },
    { mass: '715.5', reason: expect.stringMatching(/^Added while mixing: 25\.5\sg$/) },
  ])

  // The desk says what is in the dough, and why, to who knows it.
  const now = new Date()
  valueOf(await openDoughKey.call(callerOf(bakery.head.sessionSecret, now), { batchId: dough.batchId }))
  const head = await as(bakery.head)
  await head.goto(`/shift/${dough.batchId}`)
  await expect(head.getByText(/Added while mixing: 25\.5\sg/)).toBeVisible()
  expect(tablet.faults).toEqual([])
  await context.close()
})
