import type { Page } from 'playwright/test'
import { beginBatch } from '../../lib/kitchen/shifts/begin-batch'
import { moveBatch } from '../../lib/kitchen/shifts/move-batch'
import { openDoughKey } from '../../lib/kitchen/shifts/open-dough-key'
import { expect, test } from '../support/app'
import { makeApprovedTrial } from '../support/approved-trial'
import { callerOf, valueOf, type TestBakery } from '../support/bakery'

const tablet = { viewport: { width: 1080, height: 810 }, hasTouch: true, locale: 'en-GB' }
const field = (page: Page, measure: string, place: string, repeat = 1) =>
  page.getByRole('textbox', { name: `${measure}, ${place}, reading ${repeat}` })
const keep = (page: Page, measure: string, place: string) =>
  page.getByRole('button', { name: `Keep ${measure}, ${place}` })

/** A dough of the early shift, as far along as is asked for. */
async function doughAt(bakery: TestBakery, state: 'weighing' | 'in_work' | 'baked'): Promise<string> {
  const now = new Date()
  const { batches } = await makeApprovedTrial(bakery, { now })
  const batchId = batches[0]!.batchId
  const caller = callerOf(bakery.early.sessionSecret, now)
  valueOf(await beginBatch.call(caller, { batchId, seenRevision: 1, cleanDownDone: false }))
  const steps =
    state === 'weighing' ? [] : state === 'in_work' ? (['in_work'] as const) : (['in_work', 'baked'] as const)
  for (const [i, to] of steps.entries()) valueOf(await moveBatch.call(caller, { batchId, seenRevision: 2 + i, to }))
  return batchId
}

for (const state of ['weighing', 'in_work', 'baked'] as const) {
  test(`the first open field of a batch that is ${state.replace('_', ' ')} is in view on the tablet, with what is planned beside it`, async ({
    bakery,
    as,
  }) => {
    const batchId = await doughAt(bakery, state)
    valueOf(await openDoughKey.call(callerOf(bakery.early.sessionSecret, new Date()), { batchId }))
    const page = await as(bakery.early, tablet)
    await page.goto(`/shift/${batchId}`)
    await expect(field(page, 'Water added', 'Batch')).toBeInViewport({ ratio: 1 })
    await expect(keep(page, 'Water added', 'Batch')).toBeInViewport({ ratio: 1 })
    await expect(page.getByText(/^planned 722.g$/)).toBeVisible()
  })
}

test('after Keep the next open field has the focus, and what is done folds up below', async ({ bakery, as }) => {
  const batchId = await doughAt(bakery, 'in_work')
  const page = await as(bakery.early, tablet)
  await page.goto(`/shift/${batchId}`)
  await field(page, 'Water added', 'Batch').fill('720')
  await field(page, 'Water added', 'Batch').press('Enter')
  await expect(field(page, 'Dough temperature', 'Batch')).toBeFocused()
  await expect(page.getByText('In the book: Esi')).toBeHidden()
  await page.keyboard.type('26.1')
  await page.keyboard.press('Enter')
  await expect(field(page, 'Proof time', 'Batch')).toBeFocused()
  const names = await page.locator('#readings summary').allInnerTexts()
  expect(names.map((name) => name.split(/\s{2,}|\n/)[0])).toEqual([
    'Proof time',
    'Loaf weight',
    'Loaf volume',
    'Dough weight',
    'Flour temperature',
    'Room temperature',
    'Water temperature',
    'Water added',
    'Dough temperature',
  ])
  // A draft in another field is not lost when what is above it moves.
  await field(page, 'Loaf weight', 'Piece 2').fill('421')
  await field(page, 'Proof time', 'Batch').fill('55')
  await keep(page, 'Proof time', 'Batch').click()
  await expect(field(page, 'Loaf weight', 'Piece 1')).toBeFocused()
  await expect(field(page, 'Loaf weight', 'Piece 2')).toHaveValue('421')
})

test('a Keep of nothing says so at the field, and one that is refused says why there', async ({
  bakery,
  as,
  expectNoise,
}) => {
  expectNoise(/status of 422/)
  const batchId = await doughAt(bakery, 'in_work')
  const page = await as(bakery.early, tablet)
  await page.goto(`/shift/${batchId}`)
  const temperature = field(page, 'Dough temperature', 'Batch')
  await keep(page, 'Dough temperature', 'Batch').click()
  await expect(temperature).toBeFocused()
  await expect(temperature).toHaveAccessibleDescription(/Nothing is typed yet/)
  await temperature.fill('warm')
  await expect(page.getByText('Nothing is typed yet')).toHaveCount(0)
  await keep(page, 'Dough temperature', 'Batch').click()
  await expect(temperature).toHaveAccessibleDescription(/Write a number here/)
})

test('an impossible reading is kept by a second tap in another place, never by a double tap, and stays marked', async ({
  app,
  bakery,
  as,
  expectNoise,
}) => {
  expectNoise(/status of 422/)
  const batchId = await doughAt(bakery, 'in_work')
  const page = await as(bakery.early, tablet)
  await page.goto(`/shift/${batchId}`)
  const count = async () =>
    Number(
      (await app.look.query<{ n: string }>('SELECT count(*) n FROM reading WHERE batch_id = $1', [batchId])).rows[0]?.n,
    )
  await field(page, 'Dough temperature', 'Batch').fill('600')
  await keep(page, 'Dough temperature', 'Batch').click()
  await expect(page.getByText('Not kept yet: outside what is usual here')).toBeVisible()
  await keep(page, 'Dough temperature', 'Batch').dblclick()
  await expect(page.getByText('Not kept yet: outside what is usual here')).toBeVisible()
  expect(await count()).toBe(0)
  await page.getByRole('button', { name: /It is right: keep 600/ }).click()
  await expect(page.getByText('In the book: Esi')).toBeAttached()
  expect(await count()).toBe(1)
  await page.reload()
  await expect(page.getByText(/Outside what is usual, 10.0.°C to 40.0.°C, and kept all the same/)).toBeAttached()
})

test('a batch with gaps is measured for a reason only, and a slip is taken back', async ({ app, bakery, as }) => {
  const batchId = await doughAt(bakery, 'baked')
  const stateOf = async () =>
    (await app.look.query<{ state: string }>('SELECT state FROM batch WHERE id = $1', [batchId])).rows[0]?.state
  const page = await as(bakery.early, tablet)
  await page.goto(`/shift/${batchId}`)
  await expect(page.getByText('Loaf weight: 0 of 4 read')).toBeVisible()
  await page.getByRole('button', { name: 'Measured all the same' }).click()
  await expect(page.getByLabel('Why is it measured all the same?')).toHaveAccessibleDescription(/This is needed/)
  expect(await stateOf()).toBe('baked')
  await page.getByLabel('Why is it measured all the same?').fill('the loaves were sold')
  await page.getByRole('button', { name: 'Measured all the same' }).click()
  await expect(page.getByText('Why: the loaves were sold')).toBeVisible()
  await page.getByRole('button', { name: 'Take it back: baked' }).click()
  await expect(page.getByRole('button', { name: 'Measured all the same' })).toBeVisible()
  expect(await stateOf()).toBe('baked')
})

test('a lost batch has nothing to keep', async ({ bakery, as }) => {
  const batchId = await doughAt(bakery, 'in_work')
  const now = new Date()
  valueOf(
    await moveBatch.call(callerOf(bakery.late.sessionSecret, now), {
      batchId,
      seenRevision: 3,
      to: 'lost',
      why: 'the bowl fell',
    }),
  )
  const page = await as(bakery.early, tablet)
  await page.goto(`/shift/${batchId}`)
  await expect(page.getByText('Why: the bowl fell')).toBeVisible()
  await expect(page.getByRole('button', { name: /Keep/ })).toHaveCount(0)
})
