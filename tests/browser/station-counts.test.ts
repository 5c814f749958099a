import { countPieces } from '../../lib/kitchen/shifts/count-pieces'
import { moveBatch } from '../../lib/kitchen/shifts/move-batch'
import { expect, test } from '../support/app'
import { expectFit } from '../support/expect-fit'
import { callerOf, valueOf, type TestBakery } from '../support/bakery'
import { enrolAndLogOn, openTablet, readyToRead, typeNumber, untilDraft } from '../support/tablet'

/** A dough that is in work, and the code of a new tablet. */
async function inWork(bakery: TestBakery) {
  const { code, dough } = await readyToRead(bakery)
  const early = callerOf(bakery.early.sessionSecret, new Date())
  valueOf(await moveBatch.call(early, { batchId: dough.batchId, seenRevision: 2, to: 'in_work' }))
  return { code, dough }
}

test('the pieces of a dough are counted without a network, add up, and are in the book once that answers', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, dough } = await inWork(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, tap, context, faults } = tablet
  await enrolAndLogOn(tablet, code)
  await context.setOffline(true)
  await tap(page.getByRole('button', { name: new RegExp(`^${dough.code}`) }))
  await tap(page.getByRole('button', { name: /^Count the pieces/ }))
  const keep = page.getByRole('button', { name: 'Keep the count' })
  await expect(keep).toBeDisabled()
  await typeNumber(tablet, '12')
  await tap(page.getByRole('button', { name: /^Good/ }))
  await typeNumber(tablet, '11')
  await tap(page.getByRole('button', { name: /^Sold/ }))
  await typeNumber(tablet, '9')
  // Whoever gets one is told what is in it.
  await expect(page.getByText(/Whoever gets one is told its allergens/)).toBeVisible()
  await tap(page.getByRole('button', { name: /^Wasted/ }))
  await typeNumber(tablet, '4')
  await expect(page.getByText(/are more than were made/)).toBeVisible()
  await expect(keep).toBeDisabled()
  await untilDraft(page, '"wasted":"4"')
  await page.reload()
  await tap(page.getByRole('button', { name: /^Wasted/ }))
  await tap(page.getByRole('button', { name: 'Delete' }))
  await typeNumber(tablet, '1')
  await expect(page.getByText('2 are still there.')).toBeVisible()
  await tap(keep)
  await expect(page.getByRole('button', { name: /^Count the pieces/ })).toContainText('Sold: 9')
  await expect(page.getByText('1 on this tablet, not sent yet')).toBeVisible()

  await context.setOffline(false)
  await page.clock.fastForward(60_000)
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  const { rows } = await app.look.query(
    'SELECT made, good, sampled, sold, given, wasted FROM piece_count WHERE bakery_id = $1',
    [bakery.bakeryId],
  )
  expect(rows).toEqual([{ made: 12, good: 11, sampled: null, sold: 9, given: null, wasted: 1 }])
  expect(faults).toEqual([])
  await context.close()
})

test('the screens of a count fit a finger and read in glare', async ({ app, bakery, browser }) => {
  const { code, dough } = await inWork(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, tap, context } = tablet
  await enrolAndLogOn(tablet, code)
  await tap(page.getByRole('button', { name: new RegExp(`^${dough.code}`) }))
  await tap(page.getByRole('button', { name: /^Count the pieces/ }))
  await typeNumber(tablet, '4')
  await tap(page.getByRole('button', { name: /^Given/ }))
  await typeNumber(tablet, '2')
  await expectFit(page, 'count')
  await context.close()
})

test('the desk counts again from what stands, and no more can be gone than were made', async ({ bakery, as }) => {
  const { dough } = await inWork(bakery)
  const counted = { batchId: dough.batchId, seenRevision: 3, piecesMade: 12, piecesGood: 11, sold: 9, wasted: 1 }
  valueOf(await countPieces.call(callerOf(bakery.early.sessionSecret, new Date()), counted))
  const desk = await as(bakery.late)
  await desk.goto(`/shift/${dough.batchId}`)
  await expect(desk.getByLabel('Pieces made')).toHaveValue('12')
  await expect(desk.getByLabel('Sold')).toHaveValue('9')
  await desk.getByLabel('Given away').fill('3')
  await desk.getByRole('button', { name: 'Keep the count' }).click()
  await expect(desk.getByLabel('Wasted')).toHaveAttribute('aria-invalid', 'true')
  await desk.getByLabel('Given away').fill('2')
  await desk.getByRole('button', { name: 'Keep the count' }).click()
  await expect(desk.getByText('The count is in the book.')).toBeVisible()
})
