import { qrCode } from '../../lib/kitchen/stations/qr-code'
import { expect, test } from '../support/app'
import { code128, type Drawn } from '../support/drawn-codes'
import { camerasOf, noteCameras, openFakeCamera } from '../support/fake-camera'
import { receiveLots } from '../support/receive-lots'
import { enrolAndLogOn, openTablet, readyToRead, typeNumber } from '../support/tablet'

test('a lot is chosen by its label, in either kind of code, and what is none of the line’s is told', async ({
  app,
  bakery,
}) => {
  test.setTimeout(120_000)
  const { code, dough } = await readyToRead(bakery)
  await receiveLots(bakery, 'Wheat flour', [{ code: 'F-1' }, { code: 'F-2/2026' }])
  await receiveLots(bakery, 'Salt', [{ code: 'S-1' }])
  const camera = await openFakeCamera()
  const tablet = await openTablet(camera.browser, app.url)
  const { page, tap } = tablet
  await noteCameras(page)
  await enrolAndLogOn(tablet, code)
  await tap(page.getByRole('button', { name: new RegExp(`^${dough.code}`) }))
  await tap(page.getByRole('button', { name: 'Open the weights' }))
  await tap(page.getByRole('button', { name: /^Next: Wheat flour/ }))
  await tap(page.getByRole('button', { name: 'Say the lot' }))
  const scan = async (...codes: Drawn[]) => {
    camera.see(...codes)
    await tap(page.getByRole('button', { name: 'Scan the label' }))
  }
  const close = () => tap(page.getByRole('button', { name: 'Close the camera' }))
  for (const [seen, told] of [
    [[code128('S-1')], /^Lot S-1 is of Salt/],
    [[qrCode('F-9')], /^No lot F-9 of Wheat flour/],
    [[qrCode(`${app.url}/station#${dough.batchId}.1`)], 'This is the slip of a piece, not the label of a lot.'],
    [[code128('F-1'), qrCode('F-2/2026')], /^More than one code is in the picture/],
  ] as const) {
    await scan(...seen)
    await expect(page.getByText(told)).toBeVisible()
    await close()
    expect((await camerasOf(page)).has).toBe(0)
  }
  await scan(code128('F-2/2026'))
  await expect(page.getByText('From lot F-2/2026')).toBeVisible()
  expect((await camerasOf(page)).has).toBe(0)
  await typeNumber(tablet, '1163')
  await tap(page.getByRole('button', { name: 'The rest is of another lot' }))
  await tap(page.getByRole('button', { name: 'Say the lot' }))
  await scan(qrCode('f-2/2026'))
  await expect(page.getByText('Lot F-2/2026 has given its part of this line already.')).toBeVisible()
  await close()
  await scan(qrCode('f-1'))
  await expect(page.getByText('On the scale now: lot F-1')).toBeVisible()
  expect(tablet.faults).toEqual([])
  await camera.close()
})
