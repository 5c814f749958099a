import { qrCode } from '../../lib/kitchen/stations/qr-code'
import { expect, test } from '../support/app'
import { code128 } from '../support/drawn-codes'
import { expectFit, screenSizes } from '../support/expect-fit'
import { camerasOf, noteCameras, openFakeCamera } from '../support/fake-camera'
import { enrolAndLogOn, openTablet, readyToRead, tabletIn, typeNumber, untilDraft } from '../support/tablet'

test('the page allows itself the camera, and no other page of the install does', async ({ app }) => {
  const policyOf = async (address: string) =>
    (await fetch(`${app.url}${address}`, { redirect: 'manual' })).headers.get('permissions-policy')
  expect(await policyOf('/station')).toContain('camera=(self), microphone=()')
  for (const address of ['/', '/sign-in', '/stations', '/station/files/x', '/station-worker.js', '/api/v1/station'])
    expect(await policyOf(address), address).toContain('camera=(), microphone=()')
})

test('a slip is scanned in the page, without a network from the first time on', async ({ app, bakery }) => {
  test.setTimeout(120_000)
  const { code, dough } = await readyToRead(bakery)
  const camera = await openFakeCamera()
  const tablet = await openTablet(camera.browser, app.url)
  const { page, context, tap } = tablet
  await noteCameras(page)
  await enrolAndLogOn(tablet, code)
  await page.evaluate(() => navigator.serviceWorker.ready)
  await context.setOffline(true)
  const asked: string[] = []
  page.on('request', (request) => asked.push(request.url()))
  const slipOf = (piece: number, batchId = dough.batchId) => qrCode(`${app.url}/station#${batchId}.${piece}`)
  const scan = () => tap(page.getByRole('button', { name: 'Scan a slip' }))
  const back = () => tap(page.getByRole('button', { name: 'Back', exact: true }))

  camera.see(slipOf(2))
  await scan()
  await expect(page.getByRole('heading', { name: `Dough ${dough.code}, piece 2` })).toBeVisible()
  expect(await camerasOf(page)).toEqual({ had: 1, has: 0 })
  // What reads codes came from here, and from nowhere else.
  expect(asked.some((url) => url.endsWith('.wasm'))).toBe(true)
  expect(asked.filter((url) => !url.startsWith(app.url))).toEqual([])

  // From the pad to the next piece, by the same measure; what was half typed stays with its own piece.
  await tap(page.locator('section').filter({ hasText: 'Loaf weight' }).getByRole('button', { name: 'Piece 2' }))
  await typeNumber(tablet, '41')
  await untilDraft(page, '41')
  camera.see(slipOf(3), slipOf(3))
  await tap(page.getByRole('button', { name: 'Scan another slip' }))
  await expect(page.getByText('Loaf weight, Piece 3')).toBeVisible()
  await expect(page.locator('.typed')).toContainText('…')
  await tap(page.getByRole('button', { name: 'Back to the dough' }))
  await tap(page.getByRole('button', { name: 'All doughs' }))

  // What is none of ours is told, and nothing is opened.
  camera.see(code128('F-2026/118'))
  await scan()
  await expect(page.getByText('“F-2026/118” is no slip of a piece')).toBeVisible()
  await expectFit(page, 'scan', screenSizes.slice(1, 3))
  await back()
  const strange = dough.batchId.replace(/.$/, (last) => (last === '0' ? '1' : '0'))
  camera.see(slipOf(1, strange))
  await scan()
  await expect(page.getByText(/^The dough of this slip is not among those on this tablet/)).toBeVisible()
  await back()
  camera.see(qrCode(`https://elsewhere.example/station#${strange}.1`))
  await scan()
  await expect(page.getByText('This is a slip of another bakery.')).toBeVisible()
  await back()
  camera.see(slipOf(1), slipOf(2))
  await scan()
  await expect(page.getByText(/^More than one code is in the picture/)).toBeVisible()

  // Typed instead, while the camera sees something else.
  await page.getByLabel('Code of the dough').fill('99')
  await tap(page.getByRole('button', { name: 'Open', exact: true }))
  await expect(page.getByText(/^“99” is no slip/)).toBeVisible()
  await page.getByLabel('Code of the dough').fill(dough.code)
  await page.keyboard.press('Enter')
  await expect(page.getByRole('heading', { name: `Dough ${dough.code}`, exact: true })).toBeVisible()
  expect((await camerasOf(page)).has).toBe(0)
  expect(tablet.faults).toEqual([])
  await camera.close()
})

test('the camera is let go of with the page that is hidden and with whoever leaves, and opens for nobody by itself', async ({
  app,
  bakery,
}) => {
  const { code } = await readyToRead(bakery)
  const camera = await openFakeCamera()
  const tablet = await openTablet(camera.browser, app.url)
  const { page, tap } = tablet
  await noteCameras(page)
  await enrolAndLogOn(tablet, code)
  const scan = () => tap(page.getByRole('button', { name: 'Scan a slip' }))

  // It comes back with the page.
  await scan()
  await expect.poll(() => camerasOf(page)).toEqual({ had: 1, has: 1 })
  const show = (state: 'hidden' | 'visible') =>
    page.evaluate((is) => {
      Object.defineProperty(document, 'visibilityState', { configurable: true, get: () => is })
      document.dispatchEvent(new Event('visibilitychange'))
    }, state)
  await show('hidden')
  expect(await camerasOf(page)).toEqual({ had: 1, has: 0 })
  await show('visible')
  await expect.poll(() => camerasOf(page)).toEqual({ had: 2, has: 1 })

  // Nobody is on the tablet: it goes, and does not come back by itself for whoever logs on.
  await tap(page.getByRole('button', { name: 'Change' }))
  await expect(page.getByRole('heading', { name: 'Who is here?' })).toBeVisible()
  expect(await camerasOf(page)).toEqual({ had: 2, has: 0 })
  await tap(page.getByRole('button', { name: /^Esi/ }))
  await expect(page.getByRole('heading', { name: 'Doughs', exact: true })).toBeVisible()
  expect(await camerasOf(page)).toEqual({ had: 2, has: 0 })

  // So it does after ten minutes in which nobody touched anything.
  await scan()
  await expect.poll(() => camerasOf(page)).toEqual({ had: 3, has: 1 })
  await page.clock.fastForward(11 * 60_000)
  await expect(page.getByRole('heading', { name: 'Who is here?' })).toBeVisible()
  expect(await camerasOf(page)).toEqual({ had: 3, has: 0 })
  expect(tablet.faults).toEqual([])
  await camera.close()
})

test('a camera that is refused, missing or taken is told, and the dough is opened by its code', async ({
  app,
  bakery,
}) => {
  const { code, dough } = await readyToRead(bakery)
  const camera = await openFakeCamera({ isAllowed: false })
  const tablet = await openTablet(camera.browser, app.url)
  const { page, tap } = tablet
  await enrolAndLogOn(tablet, code)
  await tap(page.getByRole('button', { name: 'Scan a slip' }))
  await expect(page.getByText(/^The browser keeps the camera from this page/)).toBeVisible()
  await expect(page.getByLabel('What the camera sees')).toBeHidden()
  await expectFit(page, 'camera refused')
  const answer = (name: string) =>
    page.evaluate((of) => {
      navigator.mediaDevices.getUserMedia = () => Promise.reject(new DOMException('', of))
    }, name)
  for (const [name, told] of [
    ['NotFoundError', /^This tablet has no camera/],
    ['NotReadableError', /^The camera cannot be used now/],
    ['AbortError', /^The camera cannot be used now/],
  ] as const) {
    await answer(name)
    await tap(page.getByRole('button', { name: 'Try the camera again' }))
    await expect(page.getByText(told)).toBeVisible()
  }
  await page.getByLabel('Code of the dough').fill(dough.code)
  await tap(page.getByRole('button', { name: 'Open', exact: true }))
  await expect(page.getByRole('heading', { name: `Dough ${dough.code}`, exact: true })).toBeVisible()
  expect(tablet.faults).toEqual([])
  await camera.close()
})

test('a hand scanner types what it reads, and that opens the same', async ({ app, bakery, browser }) => {
  const { code, dough } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  const scan = async (text: string) => {
    // However busy the machine is, the keys come in one go.
    await page.clock.pauseAt((await page.evaluate(() => Date.now())) + 1_000)
    await page.keyboard.type(text)
    await page.keyboard.press('Enter')
    await page.clock.resume()
  }
  await scan('F-2026/118')
  await expect(page.getByText('“F-2026/118” is no slip of a piece')).toBeVisible()
  // Until something is touched; its Enter taps nothing, whatever has the focus.
  await page.getByRole('button', { name: 'Kept here' }).focus()
  await scan(`${app.url}/station#${dough.batchId}.2`)
  await expect(page.getByRole('heading', { name: `Dough ${dough.code}, piece 2` })).toBeVisible()
  await expect(page.getByText('“F-2026/118” is no slip of a piece')).toHaveCount(0)
  await tap(page.locator('section').filter({ hasText: 'Loaf weight' }).getByRole('button', { name: 'Piece 2' }))
  await scan(`${app.url}/station#${dough.batchId}.3`)
  await expect(page.getByText('Loaf weight, Piece 3')).toBeVisible()
  await expect(page.locator('.typed')).toContainText('…')
  // What is half written is left alone.
  await tap(page.getByRole('button', { name: 'Back to the dough' }))
  await tap(page.getByRole('button', { name: 'Write a note' }))
  await scan(`${app.url}/station#${dough.batchId}.1`)
  await expect(page.getByRole('heading', { name: /^Note/ })).toBeVisible()
  expect(tablet.faults).toEqual([])
  await context.close()
})

test('where the browser reads codes itself it does, and else or when it fails the page does', async ({
  app,
  bakery,
}) => {
  const { code, dough } = await readyToRead(bakery)
  const camera = await openFakeCamera()
  const tablet = await openTablet(camera.browser, app.url)
  const { page, tap } = tablet
  const slipOf = (piece: number) => `${app.url}/station#${dough.batchId}.${piece}`
  await page.addInitScript(() => {
    // A browser's own reader: of these kinds, and with this answer.
    const own = { formats: ['qr_code', 'code_128'], answer: '' }
    class BarcodeDetector {
      static getSupportedFormats = () => Promise.resolve(own.formats)
      detect = () =>
        own.answer === ''
          ? Promise.reject(new DOMException('', 'NotSupportedError'))
          : Promise.resolve([{ rawValue: own.answer }])
    }
    Object.assign(window, { BarcodeDetector, own })
  })
  const readsItself = (formats: string[], answer: string) =>
    page.evaluate((own) => Object.assign((window as unknown as { own: object }).own, own), { formats, answer })
  await enrolAndLogOn(tablet, code)
  const scanned = async (piece: number) => {
    await tap(page.getByRole('button', { name: 'Scan a slip' }))
    await expect(page.getByRole('heading', { name: `Dough ${dough.code}, piece ${piece}` })).toBeVisible()
    await tap(page.getByRole('button', { name: 'The whole dough' }))
    await tap(page.getByRole('button', { name: 'All doughs' }))
  }
  camera.see(qrCode(slipOf(2)))
  await readsItself(['qr_code', 'code_128', 'ean_13'], slipOf(1))
  await scanned(1)
  await readsItself(['qr_code'], slipOf(1))
  await scanned(2)
  await readsItself(['qr_code', 'code_128'], '')
  await scanned(2)
  expect(tablet.faults).toEqual([])
  await camera.close()
})

test('without what reads codes the camera is let go of, and scanning goes on once it has come', async ({
  app,
  bakery,
}) => {
  const { code, dough } = await readyToRead(bakery)
  const camera = await openFakeCamera()
  camera.see(qrCode(`${app.url}/station#${dough.batchId}.2`))
  // Nothing is kept by a worker here.
  const context = await camera.browser.newContext({ baseURL: app.url, hasTouch: true, serviceWorkers: 'block' })
  const tablet = await tabletIn(context)
  const { page, tap } = tablet
  await noteCameras(page)
  await enrolAndLogOn(tablet, code)
  await page.route('**/*.wasm', (route) => route.abort())
  await tap(page.getByRole('button', { name: 'Scan a slip' }))
  await expect(page.getByText(/^What reads codes is not on this tablet yet/)).toBeVisible()
  expect((await camerasOf(page)).has).toBe(0)
  await page.unroute('**/*.wasm')
  await tap(page.getByRole('button', { name: 'Try the camera again' }))
  await expect(page.getByRole('heading', { name: `Dough ${dough.code}, piece 2` })).toBeVisible()
  expect((await camerasOf(page)).has).toBe(0)
  await camera.close()
})
