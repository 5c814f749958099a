import { beginBatch } from '../../lib/kitchen/shifts/begin-batch'
import { expect, test } from '../support/app'
import { makeApprovedTrial } from '../support/approved-trial'
import { callerOf, valueOf, type TestBakery } from '../support/bakery'

/** A dough of a bakery that was begun a while ago. */
async function begun(bakery: TestBakery) {
  const now = new Date()
  const [dough] = (await makeApprovedTrial(bakery, { now })).batches
  if (!dough) throw new Error('a trial has doughs')
  const input = { batchId: dough.batchId, seenRevision: 1, cleanDownDone: false }
  valueOf(await beginBatch.call(callerOf(bakery.early.sessionSecret, now), input))
  return dough
}

test('what was written on paper is keyed in whole, with every fault at its field, and marked with who wrote it', async ({
  bakery,
  as,
  app,
}) => {
  const { batchId, code } = await begun(bakery)
  const page = await as(bakery.early, { locale: 'en-GB' })
  await page.goto(`/shift/${batchId}`)
  await page.getByRole('link', { name: 'Sheet to write on, and key in from paper' }).click()
  await expect(page.getByRole('heading', { name: `Batch ${code} on paper`, level: 1 })).toBeVisible()
  const temperature = page.getByRole('group', { name: 'Dough temperature, °C' }).getByRole('textbox')
  const loaves = page.getByRole('group', { name: 'Loaf weight, g' })
  const time = page.getByLabel('At what time')
  const keep = page.getByRole('button', { name: 'Put it into the book' })

  await keep.click()
  await expect(page.getByLabel('Who wrote it')).toHaveAttribute('aria-invalid', 'true')
  await expect(page.getByLabel('On which day')).toHaveAttribute('aria-invalid', 'true')
  await page.getByLabel('Who wrote it').selectOption({ label: bakery.late.name })
  await time.fill('00:01')
  await keep.click()
  await expect(page.getByText('Nothing is written yet. Key in at least one value.').first()).toBeVisible()

  await temperature.fill('26,4')
  await loaves.getByLabel('Piece 1').fill('four hundred')
  await loaves.getByLabel('Piece 2').fill('41')
  await keep.click()
  await expect(loaves.getByLabel('Piece 1')).toHaveAttribute('aria-invalid', 'true')
  await expect(loaves.getByLabel('Piece 2')).toHaveAttribute('aria-invalid', 'true')
  await expect(time).toHaveValue('00:01')
  await expect(temperature).toHaveValue('26,4')
  expect((await app.look.query(`SELECT 1 FROM reading WHERE batch_id = $1`, [batchId])).rows).toEqual([])

  await temperature.fill('26.4')
  await loaves.getByLabel('Piece 1').fill('412')
  await page.getByLabel('I looked again, the paper says so').check()
  await keep.click()
  await expect(page.getByText('What was keyed in is in the book.')).toBeVisible()
  await expect(loaves.getByText('41 g')).toBeVisible()
  await expect(loaves.getByRole('textbox')).toHaveCount(2)
  const { rows } = await app.look.query<{ value_entered: string }>(
    `SELECT value_entered FROM reading JOIN sheet_reading ON reading_id = reading.id WHERE batch_id = $1 ORDER BY 1`,
    [batchId],
  )
  expect(rows.map((row) => row.value_entered)).toEqual(['26.4', '41', '412'])

  await page.getByRole('link', { name: `Batch ${code}` }).click()
  await page.getByRole('link', { name: 'All readings' }).click()
  await expect(page.getByText(`From paper, written by ${bakery.late.name}; put into the book by Esi`)).toHaveCount(3)
})

test('the sheet prints an empty box for every value, what can hurt, and nothing that tells which dough it is', async ({
  bakery,
  as,
}) => {
  const { batchId } = await begun(bakery)
  const page = await as(bakery.early)
  await page.goto(`/shift/${batchId}/paper`)
  await page.emulateMedia({ media: 'print' })
  const sheet = page.locator('[data-sheet]')
  await expect(sheet.getByText('Written by')).toBeVisible()
  await expect(sheet.getByText(/^Contains /)).toBeVisible()
  await expect(sheet.getByText(/^Raw dough is not for eating/)).toBeVisible()
  await expect(sheet.getByRole('rowheader', { name: 'Dough temperature, °C' })).toBeVisible()
  await expect(sheet.getByRole('columnheader', { name: 'Loaf weight, g' })).toBeVisible()
  await expect(sheet.getByRole('rowheader', { name: /^Piece / })).toHaveCount(4)
  await expect(page.getByText('Put it into the book')).toBeHidden()
})

test('slips print three for each piece, each with its code, its number and that it is not for sale', async ({
  bakery,
  as,
}) => {
  const { batchId, code } = await begun(bakery)
  const page = await as(bakery.early)
  await page.goto(`/shift/${batchId}`)
  await page.getByRole('link', { name: 'Slips for its pieces' }).click()
  const slips = page.getByRole('main').getByRole('listitem')
  await expect(slips).toHaveCount(12)
  for (const piece of [1, 2, 3, 4]) await expect(slips.filter({ hasText: `Piece ${piece}` })).toHaveCount(3)
  await expect(slips.filter({ hasText: 'Not for sale' })).toHaveCount(12)
  await expect(slips.filter({ hasText: code })).toHaveCount(12)
  await expect(slips.filter({ hasText: /Contains / })).toHaveCount(12)
  // This app is reached without https, so no tablet finds it.
  await expect(page.getByText(/^Tablets do not reach this install over https yet/)).toBeVisible()
  await expect(slips.getByRole('img')).toHaveCount(0)
})
