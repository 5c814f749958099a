import type { Page } from 'playwright/test'
import { expect, test } from '../support/app'
import { fromCamera, movingWebp, noise } from '../support/made-pictures'
import { sha256 } from '../support/send-photo'
import { enrolAndLogOn, openTablet, readyToRead, type Tablet } from '../support/tablet'

/** What the tablet's own store holds of photos, read without a line of the app's. */
async function photosOnDisk(page: Page): Promise<{ states: string[]; pieces: number }> {
  return page.evaluate(async () => {
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const opening = indexedDB.open('evendough-station')
      opening.onsuccess = () => resolve(opening.result)
      opening.onerror = () => reject(new Error('the store does not open'))
    })
    const all = database.transaction(['photos', 'photoPieces'])
    const rows = all.objectStore('photos').getAll()
    const pieces = all.objectStore('photoPieces').count()
    await new Promise((resolve) => (all.oncomplete = resolve))
    database.close()
    return { states: (rows.result as { state: string }[]).map(({ state }) => state), pieces: pieces.result }
  })
}

const takePhoto = async ({ page, tap }: Tablet, name: string, mimeType: string, buffer: Buffer) => {
  await tap(page.getByRole('button', { name: 'Take a photo' }))
  await expect(page.getByText('no people')).toBeVisible()
  await page.getByLabel('Open the camera').setInputFiles({ name, mimeType, buffer })
}

test('a photo that is taken without a network is on the tablet over a reload, and goes in pieces, with a cut in the middle, once', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, dough, stationId } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, tap, context, faults } = tablet
  await enrolAndLogOn(tablet, code)
  await tap(page.getByRole('button', { name: new RegExp(`^${dough.code}`) }))
  await context.setOffline(true)
  const sent = await noise(480, 480).png().toBuffer()
  await takePhoto(tablet, 'loaf.png', 'image/png', sent)
  const picture = page.getByRole('img', { name: `Dough ${dough.code}, photo` })
  await expect(picture).toBeVisible()
  await expect(page.getByText('1 on this tablet, not sent yet')).toBeVisible()
  expect(await photosOnDisk(page)).toEqual({ states: ['waiting'], pieces: 3 })
  await page.reload()
  await expect(picture).toBeVisible()
  await expect.poll(() => picture.evaluate((img: HTMLImageElement) => img.naturalWidth)).toBe(320)

  const puts: string[] = []
  page.on('request', (request) => request.method() === 'PUT' && puts.push(request.url().split('/').at(-1)!))
  let isCut = true
  await context.route('**/pieces/1', (route) => (isCut ? route.abort() : route.continue()))
  await context.setOffline(false)
  await page.clock.fastForward(60_000)
  await expect.poll(() => puts).toEqual(['0', '1'])
  await expect.poll(async () => (await app.look.query('SELECT 1 FROM coming_photo_piece')).rows.length).toBe(1)
  expect(await photosOnDisk(page)).toEqual({ states: ['waiting'], pieces: 3 })
  isCut = false
  await page.clock.fastForward(60_000)
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  expect(puts).toEqual(['0', '1', '1', '2'])
  const { rows } = await app.look.query(
    'SELECT sent_hash, batch_id, piece, person_id, station_id FROM photo WHERE bakery_id = $1',
    [bakery.bakeryId],
  )
  expect(rows).toEqual([
    {
      sent_hash: sha256(sent),
      batch_id: dough.batchId,
      piece: null,
      person_id: bakery.early.personId,
      station_id: stationId,
    },
  ])
  // The small one stays for whoever looks; the pieces make room.
  expect(await photosOnDisk(page)).toEqual({ states: ['book'], pieces: 0 })
  await expect(picture).toBeVisible()
  expect(faults).toEqual([])
  await context.close()
})

test('a photo that the book refuses stays on the tablet with its words, and what is no picture is said at once', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, dough } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, tap, context, faults } = tablet
  await enrolAndLogOn(tablet, code)
  await tap(page.getByRole('button', { name: new RegExp(`^${dough.code}`) }))
  await takePhoto(tablet, 'page.jpg', 'image/jpeg', Buffer.from('<!doctype html>'))
  await expect(page.getByRole('alert')).toContainText('cannot read that as a picture')
  expect(await photosOnDisk(page)).toEqual({ states: [], pieces: 0 })

  // A browser shows the first picture of a film; the book keeps none.
  await page
    .getByLabel('Open the camera')
    .setInputFiles({ name: 'film.webp', mimeType: 'image/webp', buffer: await movingWebp() })
  await expect(page.getByText('1 needs attention')).toBeVisible()
  await tap(page.getByRole('button', { name: 'Kept here' }))
  await expect(page.getByText('There is more than one picture in this')).toBeVisible()
  expect(await photosOnDisk(page)).toEqual({ states: ['attention'], pieces: 1 })
  await tap(page.getByRole('button', { name: 'Send it again' }))
  await expect(page.getByText('There is more than one picture in this')).toBeVisible()
  expect((await app.look.query('SELECT 1 FROM photo WHERE bakery_id = $1', [bakery.bakeryId])).rows).toEqual([])
  expect(faults).toEqual([])
  await context.close()
})

test('a photo that the tablet has no room for is said on the spot, and nothing of it is half kept', async ({
  app,
  bakery,
  browser,
}) => {
  const { code, dough } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, tap, context } = tablet
  await enrolAndLogOn(tablet, code)
  await tap(page.getByRole('button', { name: new RegExp(`^${dough.code}`) }))
  // The disk is full from the second piece on.
  await page.evaluate(() => {
    const add = IDBObjectStore.prototype.add
    IDBObjectStore.prototype.add = function (value: { number?: number }, key?: IDBValidKey) {
      if (this.name === 'photoPieces' && value.number === 1) throw new DOMException('no room', 'QuotaExceededError')
      return key === undefined ? add.call(this, value) : add.call(this, value, key)
    }
  })
  await takePhoto(tablet, 'loaf.png', 'image/png', await noise(480, 480).png().toBuffer())
  await expect(page.getByRole('alert')).toContainText('This photo could not be kept on the tablet')
  expect(await photosOnDisk(page)).toEqual({ states: [], pieces: 0 })
  await page.getByLabel('Open the camera').setInputFiles({
    name: 'small.jpg',
    mimeType: 'image/jpeg',
    buffer: await fromCamera(60, 40),
  })
  await expect(page.getByText('Everything is in the book')).toBeVisible()
  await expect
    .poll(async () => (await app.look.query('SELECT 1 FROM photo WHERE bakery_id = $1', [bakery.bakeryId])).rows.length)
    .toBe(1)
  await context.close()
})
