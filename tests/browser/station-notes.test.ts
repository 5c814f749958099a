import { keepNote } from '../../lib/kitchen/notes/keep-note'
import { expect, test } from '../support/app'
import { callerOf, valueOf } from '../support/bakery'
import { enrolAndLogOn, openTablet, readyToRead, untilDraft } from '../support/tablet'

test('a note that is written without a network is on the tablet, and in the book once that answers', async ({
  app,
  bakery,
  browser,
}) => {
  const left = { batchId: null, text: 'The left prover drips.', forNext: true }
  valueOf(await keepNote.call(callerOf(bakery.late.sessionSecret, new Date()), left))
  const { code, dough } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, tap, context, faults } = tablet
  await enrolAndLogOn(tablet, code)
  // What the shift before left is on the first screen.
  await expect(page.getByText('The left prover drips.')).toBeVisible()

  await context.setOffline(true)
  await tap(page.getByRole('button', { name: new RegExp(`^${dough.code}`) }))
  await tap(page.getByRole('button', { name: 'Write a note' }))
  await expect(page.getByRole('heading', { name: `Note of dough ${dough.code}` })).toBeVisible()
  await expect(page.getByRole('button', { name: 'Keep the note' })).toBeDisabled()
  // Blanks at the ends, and an accent apart from its letter: the book keeps it in one form.
  await page.getByLabel('Note', { exact: true }).fill('  Sticky; cre\u0300me on the rack.  ')
  await untilDraft(page, 'on the rack.')
  await page.reload()
  await expect(page.getByLabel('Note', { exact: true })).toHaveValue('  Sticky; cre\u0300me on the rack.  ')
  await tap(page.getByRole('button', { name: 'Not for the next shift' }))
  await tap(page.getByRole('button', { name: 'Keep the note' }))
  await expect(page.getByText('1 on this tablet, not sent yet')).toBeVisible()

  await context.setOffline(false)
  await page.clock.fastForward(60_000)
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  const { rows } = await app.look.query(
    'SELECT text, for_next, batch_id, person_id FROM note WHERE bakery_id = $1 AND batch_id IS NOT NULL',
    [bakery.bakeryId],
  )
  expect(rows).toEqual([
    {
      text: 'Sticky; cr\u00e8me on the rack.',
      for_next: true,
      batch_id: dough.batchId,
      person_id: bakery.early.personId,
    },
  ])
  expect(faults).toEqual([])
  await context.close()
})
