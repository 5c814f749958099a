import { expect, test, type App } from '../support/app'
import { callerOf, valueOf } from '../support/bakery'
import { enrolAndLogOn, keepNumber, openPlace, openTablet, readyToRead, typeNumber, typePin } from '../support/tablet'
import { correctReading } from '../../lib/kitchen/readings/correct-reading'
import { v7 as uuid } from 'uuid'

async function readingsOf(app: App, batchId: string) {
  const { rows } = await app.look.query<{ id: string; value: string; reason: string | null; person: string }>(
    `SELECT reading.id, value_entered AS value, reason, person.name AS person FROM reading
     JOIN person ON person.bakery_id = reading.bakery_id AND person.id = reading.person_id
     WHERE batch_id = $1 ORDER BY received_at, supersedes_id NULLS FIRST`,
    [batchId],
  )
  return rows
}
const valuesOf = async (app: App, batchId: string) =>
  (await readingsOf(app, batchId)).map(({ value, reason, person }) => [value, reason, person])

test('a slip is put right in one tap to the pad, without a network too, and goes after what it corrects', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, dough } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  await context.setOffline(true)
  await openPlace(tablet, dough.code, 'Dough temperature', 'Whole dough')
  await keepNumber(tablet, '24.6')
  const stood = page.locator('.stood').filter({ hasText: 'Whole dough' })
  await tap(stood.getByRole('button'))
  await expect(page.getByText(/^Stands here: 24\.6\s°C, Esi/)).toBeVisible()
  await keepNumber(tablet, '26.4')
  await expect(stood).toContainText('26.4 °C')
  await expect(page.getByText('2 on this tablet, not sent yet')).toBeVisible()
  await page.reload()
  await expect(stood).toContainText('26.4 °C')
  await context.setOffline(false)
  await page.clock.fastForward(61_000)
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  expect(await valuesOf(app, dough.batchId)).toEqual([
    ['24.6', null, 'Esi'],
    ['26.4', 'Own slip, put right at once', 'Esi'],
  ])
  await expect(stood).toContainText('in the book')
  await tap(page.getByRole('button', { name: 'Kept here' }))
  await expect(page.locator('.lying').filter({ hasText: 'in place of 24.6 °C' })).toContainText('in the book')
  expect(tablet.faults).toEqual([])
  await context.close()
})

test('later it wants a reason and the PIN; without a network it is kept, and the book asks for the PIN', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, dough } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  await openPlace(tablet, dough.code, 'Dough temperature', 'Whole dough')
  await keepNumber(tablet, '24.6')
  const stood = page.locator('.stood').filter({ hasText: 'Whole dough' })
  await expect(stood).toContainText('in the book')
  // Eleven minutes are over by both clocks.
  const longAgo = async () => {
    await app.look.query("UPDATE station_shift SET began_at = began_at - interval '11 minutes' WHERE ended_at IS NULL")
    await page.clock.fastForward(5 * 60_000 + 30_000)
    await tap(page.getByRole('heading', { name: `Dough ${dough.code}` }))
    await page.clock.fastForward(5 * 60_000 + 30_000)
  }
  await app.look.query('ALTER TABLE reading DISABLE TRIGGER USER')
  await app.look.query("UPDATE reading SET received_at = received_at - interval '11 minutes' WHERE batch_id = $1", [
    dough.batchId,
  ])
  await app.look.query('ALTER TABLE reading ENABLE TRIGGER USER')
  await longAgo()
  await tap(stood.getByRole('button'))
  await expect(page.getByRole('heading', { name: 'Why is it corrected?' })).toBeVisible()
  await tap(page.getByRole('button', { name: 'Read wrong' }))
  await keepNumber(tablet, '26.4')
  await expect(page.getByRole('heading', { name: 'PIN of Esi' })).toBeVisible()
  expect(await valuesOf(app, dough.batchId)).toHaveLength(1)
  await typePin(tablet)
  await expect(stood).toContainText('26.4 °C')
  await expect(stood).toContainText('in the book')
  expect(await valuesOf(app, dough.batchId)).toEqual([
    ['24.6', null, 'Esi'],
    ['26.4', 'Read wrong', 'Esi'],
  ])

  await app.look.query('ALTER TABLE reading DISABLE TRIGGER USER')
  await app.look.query("UPDATE reading SET received_at = received_at - interval '11 minutes' WHERE batch_id = $1", [
    dough.batchId,
  ])
  await app.look.query('ALTER TABLE reading ENABLE TRIGGER USER')
  await longAgo()
  await context.setOffline(true)
  await page.clock.fastForward(31_000)
  await expect(page.getByText('Offline')).toBeVisible()
  await tap(stood.getByRole('button'))
  await page.getByLabel('Another reason').fill('The probe was not in the middle')
  await page.reload()
  await expect(page.getByLabel('Another reason')).toHaveValue('The probe was not in the middle')
  await tap(page.getByRole('button', { name: 'Go on with this reason' }))
  await keepNumber(tablet, '26.8')
  await expect(stood).toContainText('26.8 °C')
  await expect(stood).toContainText('on this tablet')
  await context.setOffline(false)
  await page.clock.fastForward(61_000)
  await expect(page.getByText('1 needs attention')).toBeVisible()
  await expect(stood).toContainText('26.8 °C')
  await tap(page.getByRole('button', { name: 'Kept here' }))
  await expect(page.locator('.lying').filter({ hasText: 'needs attention' })).toContainText('wants the PIN')
  await tap(page.getByRole('button', { name: 'Type the PIN, and send it' }))
  await typePin(tablet)
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  expect((await valuesOf(app, dough.batchId)).at(-1)).toEqual(['26.8', 'The probe was not in the middle', 'Esi'])
  expect(tablet.faults).toEqual([])
  await context.close()
})

test('one that came when somebody else had corrected it is shown as kept aside, beside what stands', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, dough } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  await openPlace(tablet, dough.code, 'Dough temperature', 'Whole dough')
  await keepNumber(tablet, '24.6')
  const stood = page.locator('.stood').filter({ hasText: 'Whole dough' })
  await expect(stood).toContainText('in the book')
  await context.setOffline(true)
  await tap(stood.getByRole('button'))
  await keepNumber(tablet, '26.4')
  const [wrong] = await readingsOf(app, dough.batchId)
  valueOf(
    await correctReading.call(callerOf(bakery.head.sessionSecret, new Date()), {
      id: uuid(),
      supersedesId: wrong?.id,
      repeat: 1,
      value: '25',
      unit: '°C',
      reason: 'read again',
    }),
  )
  await context.setOffline(false)
  await page.clock.fastForward(61_000)
  await expect(stood.getByRole('button')).toContainText('25 °C')
  await expect(stood).toContainText('A correction to 26.4 °C came when somebody else had corrected it.')
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  await tap(page.getByRole('button', { name: 'Kept here' }))
  await expect(page.locator('.lying').filter({ hasText: 'in place of' })).toContainText('kept aside')

  // What the head baker put there is not the shift baker's to correct, and the tablet says so at once.
  await tap(page.getByRole('button', { name: 'Back', exact: true }))
  await tap(stood.getByRole('button'))
  await expect(page.getByText('The head baker or the owner corrects it.')).toBeVisible()
  expect(tablet.faults).toEqual([])
  await context.close()
})

test('two that disagree ask for a third at once, without a network, and a temperature may be below zero', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, dough, trial } = await readyToRead(bakery)
  await app.look.query('UPDATE measure SET repeats = 2 WHERE id = $1', [trial.measures['loaf-volume']])
  const tablet = await openTablet(browser, app.url, { width: 375, height: 812 })
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  await context.setOffline(true)
  await openPlace(tablet, dough.code, 'Loaf volume', 'Piece 1 not read yet')
  await keepNumber(tablet, '1900')
  await expect(page.getByText('Last read: Piece 1, 1900 mL')).toBeVisible()
  await keepNumber(tablet, '1700')
  await expect(page.getByText('The readings before are too far apart. Read it once more.')).toBeVisible()
  await keepNumber(tablet, '1880')
  await expect(page.getByText('Loaf volume, Piece 2')).toBeVisible()
  await expect(page.getByText('Last read: Piece 1, reading 3, 1880 mL')).toBeVisible()
  await context.setOffline(false)
  await page.clock.fastForward(61_000)
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  expect((await valuesOf(app, dough.batchId)).map(([value]) => value).toSorted()).toEqual(['1700', '1880', '1900'])

  await tap(page.getByRole('button', { name: 'Back to the dough' }))
  await expect(page.locator('.stood').filter({ hasText: 'Piece 1, reading 3' })).toContainText('1880')
  await tap(
    page.locator('section').filter({ hasText: 'Dough temperature' }).getByRole('button', { name: 'Whole dough' }),
  )
  await typeNumber(tablet, '-4')
  await tap(page.getByRole('button', { name: 'Keep −4 °C' }))
  await expect(page.getByText('−4 °C is outside what is usual here')).toBeVisible()
  await tap(page.getByRole('button', { name: 'It is right: keep −4 °C' }))
  await expect(page.locator('.stood').filter({ hasText: '−4 °C' })).toContainText('in the book')
  expect(tablet.faults).toEqual([])
  await context.close()
})
