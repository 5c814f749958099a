import { expect, test, type App } from '../support/app'
import { receiveLots } from '../support/receive-lots'
import {
  enrolAndLogOn,
  keepNumber,
  openTablet,
  readyToRead,
  typeNumber,
  type Tablet,
  untilDraft,
} from '../support/tablet'

/** What the book holds of a dough: which ingredient, how much, and of which lots with what each gave. */
async function taken(app: App, batchId: string) {
  const { rows } = await app.look.query<{
    name: string
    mass: string | null
    code: string | null
    gave: string | null
  }>(
    `SELECT ingredient.label_name AS name, weighing.mass_entered AS mass, lot.code, taken.mass_entered AS gave
     FROM weighing
     JOIN ingredient ON ingredient.bakery_id = weighing.bakery_id AND ingredient.id = weighing.ingredient_id
     LEFT JOIN weighing_lot AS taken ON taken.bakery_id = weighing.bakery_id AND taken.weighing_id = weighing.id
     LEFT JOIN lot ON lot.bakery_id = taken.bakery_id AND lot.id = taken.lot_id
     WHERE batch_id = $1 ORDER BY weighing.received_at, weighing.taken_at, taken.position`,
    [batchId],
  )
  return rows.map(({ name, mass, code, gave }) => [name, mass, code, gave])
}

async function openFirstLine({ page, tap }: Tablet, code: string): Promise<void> {
  await tap(page.getByRole('button', { name: new RegExp(`^${code}`) }))
  await tap(page.getByRole('button', { name: 'Open the weights' }))
  await tap(page.getByRole('button', { name: /^Next: Wheat flour/ }))
}

test('a line is taken from one lot, or from two when a sack runs out, without a network and over a reload', async ({
  app,
  bakery,
  browser,
}) => {
  test.setTimeout(120_000)
  const { code, trial } = await readyToRead(bakery)
  const [dough, milky] = trial.batches
  await receiveLots(bakery, 'Wheat flour', [{ code: 'F-1' }, { code: 'F-2', bestBefore: '2026-02-03' }])
  await receiveLots(bakery, 'Salt', [{ code: 'S-1' }])
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  await page.evaluate(() => navigator.serviceWorker.ready)
  await openFirstLine(tablet, dough!.code)
  await expect(page.getByText('No lot is said.')).toBeVisible()
  await context.setOffline(true)

  // By its code, as a scanner types it: into whatever is there, with Enter. Another ingredient's lot is told as that.
  await tap(page.getByRole('button', { name: 'Say the lot' }))
  await page.keyboard.type('s-1')
  await page.keyboard.press('Enter')
  await expect(page.getByText(/^Lot s-1 is of Salt/)).toBeVisible()
  await page.keyboard.type('F-9')
  await page.keyboard.press('Enter')
  await expect(page.getByText(/^No lot F-9 of Wheat flour/)).toBeVisible()
  await page.keyboard.type('f-1')
  await page.keyboard.press('Enter')
  await expect(page.getByText('From lot F-1')).toBeVisible()

  // The sack runs out: what it gave stays, and the rest is of another one, which is past its day.
  await typeNumber(tablet, '400.5')
  await tap(page.getByRole('button', { name: 'The rest is of another lot' }))
  await expect(page.getByText(/^400\.5\sg of lot F-1$/)).toBeVisible()
  await typeNumber(tablet, '76')
  await untilDraft(page, '76')
  await page.reload()
  await expect(page.getByText(/^400\.5\sg of lot F-1$/)).toBeVisible()
  await expect(page.locator('.typed')).toContainText('76')
  await typeNumber(tablet, '3.1')
  // Of which lot the rest is has to be said, as nobody may tick what was weighed of two.
  await expect(page.getByRole('button', { name: /^Keep 1163\.6/ })).toBeDisabled()
  await expect(page.getByRole('button', { name: 'As planned' })).toHaveCount(0)
  await tap(page.getByRole('button', { name: 'Say the lot' }))
  await expect(page.getByRole('button', { name: /^F-1/ })).toBeDisabled()
  await tap(page.getByRole('button', { name: /^F-2/ }))
  await expect(page.getByText(/^Lot F-2 is past its best-before day/)).toBeVisible()
  await expect(page.getByText(/^Together: 1163\.6\sg$/)).toBeVisible()
  await expect(page.getByText('It is within what is allowed.')).toBeVisible()
  await tap(page.getByRole('button', { name: /^Keep 1163\.6/ }))
  await expect(page.getByText(/^Line 2 of 5/)).toBeVisible()
  // Nobody received a lot of water: there is nothing to say.
  await expect(page.getByText('No lot is said.')).toHaveCount(0)
  await tap(page.getByRole('button', { name: 'As planned' }))

  // One that is said may be ticked; none need be.
  await tap(page.getByRole('button', { name: 'Say the lot' }))
  await tap(page.getByRole('button', { name: /^S-1/ }))
  await tap(page.getByRole('button', { name: 'As planned' }))
  await tap(page.getByRole('button', { name: 'As planned' }))
  await expect(page.getByText('4 on this tablet, not sent yet')).toBeVisible()
  await context.setOffline(false)
  await page.clock.fastForward(61_000)
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  await expect
    .poll(() => taken(app, dough!.batchId).then((rows) => rows.sort()))
    .toEqual([
      ['Salt', null, 'S-1', null],
      ['Water', null, null, null],
      ['Wheat flour', '1163.6', 'F-1', '400.5'],
      ['Wheat flour', '1163.6', 'F-2', '763.1'],
      ['Yeast', null, null, null],
    ])

  // A correction carries the lots over, with what the first gave.
  await tap(page.getByRole('button', { name: 'All lines' }))
  await expect(page.getByRole('button', { name: /^Wheat flour/ })).toContainText(/1,163\.6\sg, from F-1, F-2/)
  await tap(page.getByRole('button', { name: /^Wheat flour/ }))
  await expect(page.getByText(/^400\.5\sg of lot F-1$/)).toBeVisible()
  await expect(page.getByText('Lot F-2 was past its best-before day.')).toBeVisible()
  await tap(page.getByRole('button', { name: 'Put it right' }))
  await expect(page.getByText(/^400\.5\sg of lot F-1$/)).toBeVisible()
  await expect(page.getByText('On the scale now: lot F-2')).toBeVisible()
  await keepNumber(tablet, '762')
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  await expect
    .poll(() => taken(app, dough!.batchId).then((rows) => rows.slice(-2)))
    .toEqual([
      ['Wheat flour', '1162.5', 'F-1', '400.5'],
      ['Wheat flour', '1162.5', 'F-2', '762'],
    ])

  // At the next dough the sack that was open last is offered by one tap.
  await tap(page.getByRole('button', { name: 'All lines' }))
  await tap(page.getByRole('button', { name: 'Back to the dough' }))
  await tap(page.getByRole('button', { name: 'All doughs' }))
  await tap(page.getByRole('button', { name: `Begin dough ${milky!.code}` }))
  await tap(page.getByRole('button', { name: 'Open the weights' }))
  await tap(page.getByRole('button', { name: /^Next: Wheat flour/ }))
  await tap(page.getByRole('button', { name: 'Lot F-2, as last time' }))
  await tap(page.getByRole('button', { name: 'As planned' }))
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  await expect.poll(() => taken(app, milky!.batchId)).toEqual([['Wheat flour', null, 'F-2', null]])
  expect(tablet.faults).toEqual([])
  await context.close()
})
