import type { Page } from 'playwright/test'
import { expect, test } from '../support/app'
import { walkReading } from '../support/walks/shift'

const field = (page: Page, measure: string, place: string, repeat = 1) =>
  page.getByRole('textbox', { name: `${measure}, ${place}, reading ${repeat}` })
const keep = (page: Page, measure: string, place: string) =>
  page.getByRole('button', { name: `Keep ${measure}, ${place}` })
const tablet = { viewport: { width: 1080, height: 810 }, hasTouch: true, locale: 'en-GB' }

test('a reading that got no answer keeps what was typed, and is kept once when it is sent again', async ({
  app,
  bakery,
  as,
  expectNoise,
}) => {
  expectNoise(/ERR_FAILED|ERR_CONNECTION|Failed to load resource/)
  const { batchId } = await walkReading({ bakery, neighbour: bakery, look: app.look })
  const page = await as(bakery.early, tablet)
  await page.goto(`/shift/${batchId}`)
  const count = async () =>
    Number(
      (await app.look.query<{ n: string }>('SELECT count(*) n FROM reading WHERE batch_id = $1', [batchId])).rows[0]?.n,
    )

  // The request arrives and its answer is lost, with whatever else the page asks for: nobody at the tablet can know that it
  // was kept, by the page that follows the book either.
  await page.route(`**/shift/${batchId}`, (route) => route.abort())
  await page.route('**/api/v1/entries', async (route) => {
    await route.fetch()
    await route.abort()
  })
  await field(page, 'Loaf weight', 'Piece 1').fill('421.5')
  await keep(page, 'Loaf weight', 'Piece 1').click()
  await expect(page.getByText('no answer came')).toBeVisible()
  await expect(page.getByText('In the book: Esi')).toHaveCount(0)
  await expect(field(page, 'Loaf weight', 'Piece 1')).toHaveValue('421.5')
  expect(await count()).toBe(1)

  await page.unroute('**/api/v1/entries')
  await page.getByRole('button', { name: 'Send again' }).click()
  await expect(page.getByText('In the book: Esi')).toBeVisible()
  expect(await count()).toBe(1)
})

test('a reading that got no answer and is seen in the book is not offered to be sent again', async ({
  app,
  bakery,
  as,
  expectNoise,
}) => {
  expectNoise(/ERR_FAILED|ERR_CONNECTION|Failed to load resource/)
  const { batchId } = await walkReading({ bakery, neighbour: bakery, look: app.look })
  const page = await as(bakery.early, tablet)
  await page.goto(`/shift/${batchId}`)
  await page.route('**/api/v1/entries', async (route) => {
    await route.fetch()
    await route.abort()
  })
  await field(page, 'Loaf weight', 'Piece 1').fill('421.5')
  await keep(page, 'Loaf weight', 'Piece 1').click()
  // The page follows the book by itself, and finds there what it sent.
  await expect(page.getByText('In the book: Esi')).toBeVisible()
  await expect(page.getByRole('button', { name: 'Send again' })).toHaveCount(0)
  await expect(page.getByText('no answer came')).toHaveCount(0)
  await expect(page.getByRole('textbox', { name: /^Loaf weight, Piece 1/ })).toHaveCount(0)
  await page.reload()
  await expect(page.getByText('In the book: Esi')).toHaveCount(1)
  await expect(page.getByRole('textbox', { name: /^Loaf weight, Piece 1/ })).toHaveCount(0)
})

test('a reading that comes too late for its place is kept aside, and says so; it is not sent as another one', async ({
  app,
  bakery,
  as,
  expectNoise,
}) => {
  expectNoise(/422/)
  const { batchId } = await walkReading({ bakery, neighbour: bakery, look: app.look })
  const pages = await Promise.all([bakery.early, bakery.late].map((person) => as(person, tablet)))
  for (const [at, page] of pages.entries()) {
    await page.goto(`/shift/${batchId}`)
    await field(page, 'Loaf weight', 'Piece 1').fill(at === 0 ? '421.5' : '431.5')
  }
  const [first, second] = pages as [Page, Page]
  await keep(first, 'Loaf weight', 'Piece 1').click()
  await expect(first.getByText('In the book: Esi')).toBeVisible()
  await keep(second, 'Loaf weight', 'Piece 1').click()
  await expect(second.getByText('kept aside until the head baker settles it')).toBeVisible()
  // The reading that was faster is there, and the field is empty for whatever comes next.
  await expect(second.getByText('In the book: Esi')).toBeVisible()
  await expect(second.getByRole('textbox', { name: /^Loaf weight, Piece 1/ })).toHaveValue('')
  await keep(second, 'Loaf weight', 'Piece 1').click()
  const { rows } = await app.look.query<{ n: string }>('SELECT count(*) n FROM entry_to_settle WHERE batch_id = $1', [
    batchId,
  ])
  expect(rows[0]?.n).toBe('1')
})

test('an answer that does not echo the hash is not taken for kept', async ({ app, bakery, as }) => {
  const { batchId } = await walkReading({ bakery, neighbour: bakery, look: app.look })
  const page = await as(bakery.early, tablet)
  await page.goto(`/shift/${batchId}`)
  await page.route('**/api/v1/entries', async (route) => {
    const { entries } = route.request().postDataJSON() as { entries: { id: string }[] }
    await route.fulfill({
      json: {
        entries: [
          { outcome: 'kept', id: entries[0]?.id, hash: 'a'.repeat(64), isAgain: false, outOfRange: false, needs: null },
        ],
      },
    })
  })
  await field(page, 'Loaf weight', 'Piece 1').fill('421.5')
  await field(page, 'Loaf weight', 'Piece 1').press('Enter')
  await expect(page.getByText('The book answered for something else')).toBeVisible()
  await expect(page.getByText('In the book: Esi')).toHaveCount(0)
})

test('two readings that disagree ask for a third, and a slip is corrected with a reason', async ({
  app,
  bakery,
  as,
}) => {
  const { batchId } = await walkReading({ bakery, neighbour: bakery, look: app.look })
  const page = await as(bakery.early, tablet)
  await page.goto(`/shift/${batchId}`)
  for (const [repeat, value] of [
    [1, '1900'],
    [2, '1990'],
  ] as const) {
    await field(page, 'Loaf volume', 'Piece 2', repeat).fill(value)
    await keep(page, 'Loaf volume', 'Piece 2').click()
  }
  await expect(page.getByText('third reading: the first two disagree')).toBeVisible()
  await page.getByRole('button', { name: /Correct 1990/ }).click()
  await page.getByRole('textbox', { name: 'Reading', exact: true }).fill('1909')
  await page.getByLabel('Why was it wrong?').fill('typing slip')
  await page.getByRole('button', { name: 'Correct', exact: true }).click()
  await expect(page.getByText('corrected: typing slip')).toBeVisible()
  await expect(page.getByText('third reading: the first two disagree')).toHaveCount(0)
  await page.reload()
  await expect(page.getByRole('cell', { name: '1,905' })).toHaveCount(2)
})
