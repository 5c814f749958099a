import { beginBatch } from '../../lib/kitchen/shifts/begin-batch'
import { getBatch } from '../../lib/kitchen/shifts/get-batch'
import { expect, test } from '../support/app'
import { callerOf, valueOf } from '../support/bakery'
import { enrolAndLogOn, keepNumber, openTablet, readyToRead } from '../support/tablet'

test('water is told without a network from flour and room, and the day’s first dough corrects the next one’s', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, dough, trial } = await readyToRead(bakery)
  const next = trial.batches[1]!
  const early = () => callerOf(bakery.early.sessionSecret, new Date())
  const begun = { batchId: next.batchId, seenRevision: 1, cleanDownDone: true }
  valueOf(await beginBatch.call(early(), begun))
  const tablet = await openTablet(browser, app.url)
  const { page, tap, context, faults } = tablet
  await enrolAndLogOn(tablet, code)
  const open = (of: string) => tap(page.getByRole('button', { name: `${of} Trial` }))
  const read = async (measure: string, value: string) => {
    await tap(page.locator('section').filter({ hasText: measure }).getByRole('button', { name: 'Whole dough' }))
    await keepNumber(tablet, value)
    await expect(page.locator('section').filter({ hasText: measure })).toContainText(value)
  }

  await context.setOffline(true)
  await open(dough.code)
  await expect(page.getByText('Read the temperatures of the flour and of the room first.')).toBeVisible()
  await read('Flour temperature', '21')
  await expect(page.getByText('Read the room’s temperature first.')).toBeVisible()
  await read('Room temperature', '23')
  await expect(page.getByText('Water: 12.4\u00a0°C')).toBeVisible()
  await expect(
    page.getByText(/^For a dough of 26\s°C, as planned: flour 21\s°C, room 23\s°C, and 10\s°C by mixing\.$/),
  ).toBeVisible()
  await expect(page.getByText(/^How much mixing warms it is a usual figure/)).toBeVisible()
  await read('Water temperature', '12.4')
  await tap(page.getByRole('button', { name: 'Begin mixing' }))
  // What is told before mixing is no more to be told.
  await expect(page.getByText('Water: 12.4\u00a0°C')).toBeHidden()
  await expect(page.locator('section').filter({ hasText: 'Water temperature' })).toContainText('12.4')
  await read('Dough temperature', '27')

  // Nobody has asked the book since: the tablet knows of the first dough alone.
  await tap(page.getByRole('button', { name: 'All doughs' }))
  await open(next.code)
  await read('Flour temperature', '21')
  await read('Room temperature', '23')
  await expect(page.getByText('Water: 10.7\u00a0°C')).toBeVisible()
  await expect(
    page.getByText(`How much mixing warms it is what today’s first dough, ${dough.code}, came to.`),
  ).toBeVisible()
  await page.reload()
  await expect(page.getByText('Water: 10.7\u00a0°C')).toBeVisible()

  await context.setOffline(false)
  await page.clock.fastForward(60_000)
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  const { water } = valueOf(await getBatch.call(early(), { batchId: next.batchId }))
  expect(water).toMatchObject({ told: { correctedBy: dough.code } })
  expect(water?.outcome === 'known' && water.told.outcome === 'told' && water.told.waterTempC).toBeCloseTo(10.69, 1)
  await expect(page.getByText('Water: 10.7\u00a0°C')).toBeVisible()
  expect(faults).toEqual([])
  await context.close()
})
