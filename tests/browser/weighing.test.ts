import { beginBatch } from '../../lib/kitchen/shifts/begin-batch'
import { receiveLot } from '../../lib/kitchen/stores/receive-lot'
import { expect, test } from '../support/app'
import { makeApprovedTrial } from '../support/approved-trial'
import { callerOf, valueOf, type TestBakery } from '../support/bakery'

const tablet = { viewport: { width: 1080, height: 810 }, hasTouch: true, locale: 'en-GB' }

/** The control, which has no milk powder in it; the other dough has. */
async function begun(bakery: TestBakery): Promise<string> {
  const now = new Date()
  const { batches } = await makeApprovedTrial(bakery, { now })
  const { batchId } = batches[0]!
  valueOf(
    await beginBatch.call(callerOf(bakery.early.sessionSecret, now), {
      batchId,
      seenRevision: 1,
      cleanDownDone: false,
    }),
  )
  return batchId
}

test('one tap for what every dough has the same of, digits for the rest, and nothing that tells which dough it is', async ({
  bakery,
  as,
}) => {
  const page = await as(bakery.early, tablet)
  await page.goto(`/shift/${await begun(bakery)}`)
  const weighed = page.locator('#weighed')
  await weighed.getByRole('button', { name: 'All as planned' }).click()
  await expect(weighed.getByText('4 of 5 lines written')).toBeVisible()
  await weighed.getByLabel(/^Milk powder .*, g$/).fill('20')
  await weighed.getByRole('button', { name: 'Keep what was weighed' }).first().click()
  await expect(weighed.getByText('5 of 5 lines written')).toBeVisible()
  await expect(weighed.getByText(/Kept: Esi/)).toHaveCount(5)
  await expect(weighed.getByText(/planned|Off:|\d g$/)).toHaveCount(0)

  await page.getByRole('button', { name: 'Open this dough’s key' }).click()
  await expect(weighed.getByText('20.0 g')).toBeVisible()
  await expect(weighed.getByText(/^Off: more than/)).toBeVisible()
  await expect(weighed.getByText('as planned', { exact: true })).toHaveCount(4)
})

test('a weight in another unit is asked back with everything typed kept, and one that was wrong gives way for a reason', async ({
  bakery,
  as,
}) => {
  const page = await as(bakery.early, tablet)
  await page.goto(`/shift/${await begun(bakery)}`)
  const weighed = page.locator('#weighed')
  const milk = weighed.getByLabel(/^Milk powder .*, g$/)
  const keep = weighed.getByRole('button', { name: 'Keep what was weighed' })
  await expect(weighed.getByLabel('I looked at the scale again')).toHaveCount(0)
  await milk.fill('5000')
  await keep.first().click()
  await expect(weighed.getByText('Was it grams or kilograms?')).toBeVisible()
  await expect(milk).toHaveValue('5000')
  await weighed.getByLabel('I looked at the scale again').check()
  await keep.first().click()
  await expect(weighed.getByText('1 of 5 lines written')).toBeVisible()

  await weighed.getByText('A line was off, was left out').click()
  await weighed.getByLabel(/^None of it went in: Milk powder/).check()
  await keep.click()
  await expect(weighed.getByText('Why was it wrong?').first()).toBeVisible()
  await expect(weighed.getByRole('alert').or(weighed.locator('[aria-invalid=true]')).first()).toBeVisible()
  await weighed.getByLabel('Why was it wrong?').fill('It was the other dough')
  await keep.click()
  await page.getByRole('button', { name: 'Open this dough’s key' }).click()
  await expect(weighed.getByText('nothing of it')).toBeVisible()
  await expect(weighed.getByText(/corrected: It was the other dough/)).toBeVisible()
})

test('a line names the lots that it was from: one by a choice, two with what each gave, and nobody has to', async ({
  app,
  bakery,
  as,
}) => {
  const batchId = await begun(bakery)
  const receive = async (name: string, code: string, bestBefore: string | null) => {
    const { rows } = await app.look.query<{ id: string }>(
      `SELECT id FROM ingredient WHERE bakery_id = $1 AND label_name = $2`,
      [bakery.bakeryId, name],
    )
    const lot = { ingredientId: rows[0]!.id, code, receivedOn: '2026-03-02', bestBefore, strength: null, note: '' }
    valueOf(await receiveLot.call(callerOf(bakery.head.sessionSecret, new Date()), lot))
  }
  await receive('Wheat flour', 'W 1', null)
  await receive('Milk powder', 'M 1', '2026-03-03')
  await receive('Milk powder', 'M 2', null)
  const page = await as(bakery.early, tablet)
  await page.goto(`/shift/${batchId}`)
  const weighed = page.locator('#weighed')
  await weighed
    .getByLabel(/^Lot: Wheat flour/)
    .first()
    .selectOption('W 1')
  await weighed.getByRole('button', { name: 'All as planned' }).click()
  await expect(weighed.getByText('4 of 5 lines written')).toBeVisible()

  const milk = weighed
    .locator('form')
    .filter({ has: page.getByLabel(/^Milk powder .*, g$/) })
    .first()
  await milk.getByLabel(/^Milk powder .*, g$/).fill('20')
  await milk.getByLabel(/^Lot: Milk powder/).selectOption('M 1, past its best-before day')
  await milk.getByText(/two lots:/i).click()
  await milk.getByLabel(/^Of the first lot/).fill('12.5')
  await milk.getByLabel(/^Other lot/).selectOption('M 2')
  await milk.getByLabel(/^Of the other lot/).fill('7')
  await milk.getByRole('button', { name: 'Keep what was weighed' }).click()
  await expect(milk.getByText('The lots make 19.5 g together, and 20 g were weighed.').first()).toBeVisible()
  // What was typed is there, and what is wrong is in sight.
  await expect(milk.getByLabel(/^Of the other lot/)).toBeVisible()
  await milk.getByLabel(/^Of the other lot/).fill('7.5')
  await milk.getByRole('button', { name: 'Keep what was weighed' }).click()
  await expect(weighed.getByText('5 of 5 lines written')).toBeVisible()
  await expect(weighed.getByText(/Lot (W|M)/)).toHaveCount(0)

  await page.getByRole('button', { name: 'Open this dough’s key' }).click()
  await expect(weighed.getByText('Lot W 1', { exact: true })).toBeVisible()
  await expect(weighed.getByText('Lot M 1: 12.5 g')).toBeVisible()
  await expect(weighed.getByText('Lot M 2: 7.5 g')).toBeVisible()
  await expect(weighed.getByText('Lot M 1 was past its best-before day.')).toBeVisible()
})
