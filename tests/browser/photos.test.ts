import type { Page } from 'playwright/test'
import { expect, test } from '../support/app'
import { makeApprovedTrial } from '../support/approved-trial'
import { fromCamera, halves, noise } from '../support/made-pictures'
import { sha256 } from '../support/send-photo'

const take = async (page: Page, buffer: Buffer, piece = 'the whole batch') => {
  const form = page.locator('#photos form')
  if (!(await form.isVisible())) await page.getByText('Add a photo').click()
  await form.getByLabel('Photo').setInputFiles({ name: 'loaf.jpg', mimeType: 'image/jpeg', buffer })
  await form.getByLabel('What it shows').selectOption(piece)
}
const keep = (page: Page) => page.getByRole('button', { name: 'Keep the photo' }).click()

test('a photo is added to a batch, stands there for everybody, and opens large', async ({
  app,
  bakery,
  as,
  expectNoise,
}) => {
  // The browser's own page around a picture is styled inline, and looked at by a script of the test's: in a sandbox neither is.
  expectNoise(
    /^Applying inline style violates .* 'default-src 'none''|^Blocked script execution in '.*\/api\/v1\/photos\//,
  )

  const { batches } = await makeApprovedTrial(bakery, { now: new Date() })
  const batch = batches[0]!
  const page = await as(bakery.early)
  await page.goto(`/shift/${batch.batchId}`)
  await expect(page.locator('#photos')).toContainText('No photo was taken of it.')
  const sent = await fromCamera(600, 400, 6)
  await take(page, sent, 'piece 2')
  await expect(page.locator('#photos')).toContainText('no people')
  await keep(page)
  await expect(page.locator('#photos')).toContainText('The photo is kept.')
  const { rows } = await app.look.query<{ sent_hash: string; piece: number; station_id: null; width: number }>(
    'SELECT sent_hash, piece, station_id, width FROM photo WHERE bakery_id = $1',
    [bakery.bakeryId],
  )
  expect(rows).toEqual([{ sent_hash: sha256(sent), piece: 2, station_id: null, width: 400 }])

  const other = await as(bakery.late)
  await other.goto(`/shift/${batch.batchId}`)
  const picture = other.getByRole('img', { name: `Photo 1 of batch ${batch.code}, piece 2` })
  await picture.scrollIntoViewIfNeeded()
  await expect.poll(() => picture.evaluate((img: HTMLImageElement) => img.complete && img.naturalWidth)).toBe(213)
  await expect(other.locator('#photos li')).toContainText('Esi')
  await picture.click()
  await expect(other).toHaveURL(/\/api\/v1\/photos\//)
  await expect
    .poll(() => other.locator('img').evaluate((img: HTMLImageElement) => [img.naturalWidth, img.naturalHeight]))
    .toEqual([400, 600])
})

test('a photo that was cut on its way stays chosen, and goes on from where it was', async ({
  app,
  bakery,
  as,
  expectNoise,
}) => {
  expectNoise(/Failed to load resource/)
  const { batches } = await makeApprovedTrial(bakery, { now: new Date() })
  const page = await as(bakery.early)
  await page.goto(`/shift/${batches[0]!.batchId}`)
  const sent = await noise(480, 480).png().toBuffer()
  const puts: string[] = []
  page.on('request', (request) => request.method() === 'PUT' && puts.push(request.url().split('/').at(-1)!))
  let isCut = true
  await page.route('**/pieces/1', (route) => (isCut ? route.abort() : route.continue()))
  const form = page.locator('#photos form')
  await page.getByText('Add a photo').click()
  await form.getByLabel('Photo').setInputFiles({ name: 'loaf.png', mimeType: 'image/png', buffer: sent })
  await keep(page)
  await expect(page.locator('#photos')).toContainText('The book did not answer. The photo is still chosen here')
  expect(puts).toEqual(['0', '1'])
  isCut = false
  await keep(page)
  await expect(page.locator('#photos')).toContainText('The photo is kept.')
  expect(puts).toEqual(['0', '1', '1', '2'])
  const { rows } = await app.look.query('SELECT sent_hash FROM photo WHERE bakery_id = $1', [bakery.bakeryId])
  expect(rows).toEqual([{ sent_hash: sha256(sent) }])
})

test('what is no photo, or none that can be kept, is said in words, and nothing chosen as well', async ({
  app,
  bakery,
  as,
  expectNoise,
}) => {
  expectNoise(/Failed to load resource/)
  const { batches } = await makeApprovedTrial(bakery, { now: new Date() })
  const page = await as(bakery.early)
  await page.goto(`/shift/${batches[0]!.batchId}`)
  await page.getByText('Add a photo').click()
  await keep(page)
  await expect(page.locator('#photos')).toContainText('Choose a photo first.')
  await take(page, Buffer.from('<!doctype html><script>1</script>'))
  await keep(page)
  await expect(page.locator('#photos')).toContainText('This is no photo that can be kept.')
  await take(page, Buffer.alloc(9 * 1024 * 1024, 1))
  await keep(page)
  await expect(page.locator('#photos')).toContainText('8 MB is the most')
  await take(page, await fromCamera())
  await keep(page)
  await expect(page.locator('#photos')).toContainText('The photo is kept.')
  const { rows } = await app.look.query('SELECT 1 FROM photo WHERE bakery_id = $1', [bakery.bakeryId])
  expect(rows).toHaveLength(1)
})

test('a photo that is larger than the book takes is made smaller before it is sent', async ({ app, bakery, as }) => {
  const { batches } = await makeApprovedTrial(bakery, { now: new Date() })
  const page = await as(bakery.early)
  await page.goto(`/shift/${batches[0]!.batchId}`)
  const large = await halves(1_800, 1_800).png({ compressionLevel: 0 }).toBuffer()
  expect(large.length).toBeGreaterThan(8 * 1024 * 1024)
  await take(page, large)
  await keep(page)
  await expect(page.locator('#photos')).toContainText('The photo is kept.')
  const { rows } = await app.look.query<{ width: number; sent_bytes: number }>(
    'SELECT width, sent_bytes FROM photo WHERE bakery_id = $1',
    [bakery.bakeryId],
  )
  expect(rows[0]!.width).toBe(1_800)
  expect(rows[0]!.sent_bytes).toBeLessThanOrEqual(8 * 1024 * 1024)
})
