import fs from 'node:fs'
import { createRequire } from 'node:module'
import type { Page } from 'playwright/test'
import { expect, test } from '../support/app'
import { fromCamera } from '../support/made-pictures'
import { receiveLots } from '../support/receive-lots'
import { enrolAndLogOn, keepNumber, openTablet, readyToRead, typeNumber } from '../support/tablet'

const axeSource = fs.readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')
declare const axe: { run(options: object): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> }

const sizes = [
  { width: 1080, height: 810 },
  { width: 810, height: 1080 },
  { width: 375, height: 812 },
  { width: 1366, height: 768 },
]

/** What is wrong with a screen at a size: too small a target, two too close together, too wide, or what axe finds. */
async function faultsOf(page: Page): Promise<string[]> {
  const layout = await page.evaluate(() => {
    const faults: string[] = []
    const controls = [...document.querySelectorAll('button, input')].filter((each) => each.checkVisibility())
    const boxes = controls.map((each) => ({ box: each.getBoundingClientRect(), text: each.textContent }))
    for (const { box, text } of boxes)
      if (box.width < 48 || box.height < 48) faults.push(`${text}: ${box.width} × ${box.height}`)
    for (const [at, one] of boxes.entries())
      for (const other of boxes.slice(at + 1)) {
        const apartX = Math.max(one.box.left, other.box.left) - Math.min(one.box.right, other.box.right)
        const apartY = Math.max(one.box.top, other.box.top) - Math.min(one.box.bottom, other.box.bottom)
        const apart = Math.max(apartX, apartY)
        if (apart < 7.5 && apart > -1) faults.push(`${one.text} and ${other.text}: ${apart} apart`)
      }
    const { scrollWidth, clientWidth } = document.documentElement
    if (scrollWidth > clientWidth) faults.push(`${scrollWidth - clientWidth} too wide`)
    return faults
  })
  const found = await page.evaluate(async () => {
    const tags = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']
    const every = await axe.run({ runOnly: tags })
    const contrast = await axe.run({ runOnly: { type: 'rule', values: ['color-contrast-enhanced'] } })
    return [...every.violations, ...contrast.violations].map(
      ({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' | ')}`,
    )
  })
  return [...layout, ...found]
}

/** Looks at a screen at every size, or at some, in light and dark. */
async function mustBeSound(page: Page, name: string, at = sizes): Promise<void> {
  await page.evaluate(axeSource)
  for (const size of at)
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.setViewportSize(size)
      await page.emulateMedia({ colorScheme })
      expect(await faultsOf(page), `${name}, ${size.width}, ${colorScheme}`).toEqual([])
    }
}

test('every screen fits a finger, reads in glare, in light and dark, either way up', async ({
  app,
  bakery,
  browser,
}) => {
  test.setTimeout(240_000)
  const { code, dough } = await readyToRead(bakery)
  await receiveLots(bakery, 'Wheat flour', [{ code: 'F-1' }, { code: 'F-2', bestBefore: '2026-02-03' }])
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  const look = (name: string) => mustBeSound(page, name)
  await page.goto('/station')
  await page.getByLabel('Code').waitFor()
  await look('enrol')
  await enrolAndLogOn(tablet, code)
  await page.getByRole('button', { name: new RegExp(`^${dough.code}`) }).waitFor()
  await look('doughs')
  await tap(page.getByRole('button', { name: /^Begin dough/ }))
  await page.getByRole('button', { name: 'Open the weights' }).waitFor()
  await look('begun')
  await tap(page.getByRole('button', { name: 'Open the weights' }))
  await page.getByText('5 of 5 lines left').waitFor()
  await look('lines')
  await tap(page.getByRole('button', { name: /^Next: Wheat flour/ }))
  await tap(page.getByRole('button', { name: 'Say the lot' }))
  await look('lots')
  await tap(page.getByRole('button', { name: /^F-2/ }))
  await typeNumber(tablet, '1')
  await tap(page.getByRole('button', { name: 'The rest is of another lot' }))
  await look('of two lots')
  await tap(page.getByRole('button', { name: 'Not of lot F-2' }))
  await typeNumber(tablet, '9999')
  await look('line')
  await page.setViewportSize({ width: 375, height: 812 })
  await expect(page.getByRole('button', { name: 'Keep 9999 g' })).toBeInViewport({ ratio: 1 })
  await tap(page.getByRole('button', { name: 'Keep 9999 g' }))
  await look('off')
  await tap(page.getByRole('button', { name: 'Weigh again' }))
  await tap(page.getByRole('button', { name: 'Another scale' }))
  await look('scales')
  await tap(page.getByRole('button', { name: 'Back to the line' }))
  await tap(page.getByRole('button', { name: 'As planned' }))
  await tap(page.getByRole('button', { name: 'Line before' }))
  await page.getByRole('button', { name: 'Put it right' }).waitFor()
  await look('written')
  await tap(page.getByRole('button', { name: 'Put it right' }))
  await page.getByText(/^Written: as planned/).waitFor()
  await look('put right')
  await tap(page.getByRole('button', { name: 'All lines' }))
  await tap(page.getByRole('button', { name: 'Back to the dough' }))
  await tap(page.getByRole('button', { name: 'All doughs' }))
  await tap(page.getByRole('button', { name: new RegExp(`^${dough.code}`) }))
  await tap(page.getByRole('button', { name: 'Something went wrong' }))
  await page.getByLabel('Something else').waitFor()
  await look('went wrong')
  await tap(page.getByRole('button', { name: 'The dough is lost' }))
  await page.getByText('Noted here').waitFor()
  await look('dough')
  await tap(page.getByRole('button', { name: 'Another step' }))
  await tap(page.getByRole('button', { name: 'Into the oven' }))
  await tap(page.getByRole('button', { name: 'Keep it' }))
  await page.getByText(/^Baking: 0 of 30/).waitFor()
  await look('baking')
  await tap(page.getByRole('button', { name: /into the oven/ }))
  await page.getByRole('heading', { name: 'What is wrong?' }).waitFor()
  await look('step put right')
  await tap(page.getByRole('button', { name: 'Back to the dough' }))
  await tap(page.getByRole('button', { name: 'Another step' }))
  await tap(page.getByRole('button', { name: 'Into the retarder' }))
  await page.getByLabel('Chamber, °C').fill('900')
  await tap(page.getByRole('button', { name: 'Keep it' }))
  await page.getByText(/between −40/).waitFor()
  await look('step')
  await tap(page.getByRole('button', { name: 'Back to the dough' }))
  await tap(page.locator('section').filter({ hasText: 'Loaf weight' }).getByRole('button', { name: 'Piece 1' }))
  await look('reading')
  await page.setViewportSize({ width: 375, height: 812 })
  await expect(page.getByRole('button', { name: 'Keep', exact: true })).toBeInViewport({ ratio: 1 })
  await keepNumber(tablet, '9')
  await look('odd')
  await tap(page.getByRole('button', { name: 'It is right: keep 9' }))
  await tap(page.getByRole('button', { name: 'Kept here' }))
  await look('kept')
  await tap(page.getByRole('button', { name: 'Back', exact: true }))
  await tap(page.getByRole('button', { name: 'Back to the dough' }))
  await tap(page.locator('.stood').filter({ hasText: 'Piece 1' }).getByRole('button'))
  await look('slip')
  await page.clock.fastForward(6 * 60_000)
  await tap(page.getByRole('button', { name: 'Back to the dough' }))
  await page.clock.fastForward(5 * 60_000)
  await tap(page.locator('.stood').filter({ hasText: 'Piece 1' }).getByRole('button'))
  await page.getByRole('heading', { name: 'Why is it corrected?' }).waitFor()
  await look('correction')
  await tap(page.getByRole('button', { name: 'Typed wrong' }))
  await keepNumber(tablet, '431')
  await page.getByRole('heading', { name: 'PIN of Esi' }).waitFor()
  await look('PIN')
  await tap(page.getByRole('button', { name: 'Back', exact: true }))
  await tap(page.getByRole('button', { name: 'Kept here' }))
  await tap(page.getByRole('button', { name: 'Change' }))
  await tap(page.getByRole('button', { name: 'Back', exact: true }))
  await look('who')
  await page.clock.fastForward(31 * 60_000)
  await page.getByText(/Baking: time is up/).waitFor()
  await look('time is up')
  expect(tablet.faults).toEqual([])
  await context.close()
})

test('an address that is not safe is named before anything is begun', async ({ app, browser }) => {
  const context = await browser.newContext({ baseURL: app.url })
  await context.addInitScript(() => Object.defineProperty(window, 'isSecureContext', { value: false }))
  const page = await context.newPage()
  await page.goto('/station')
  await expect(page.getByRole('heading', { name: 'This address is not safe to work at' })).toBeVisible()
  await expect(page.getByRole('button')).toHaveCount(0)
  expect(await page.evaluate(async () => (await navigator.serviceWorker.getRegistrations()).length)).toBe(0)
  await context.close()
})

test('so do the screens of photos, upright and on a phone', async ({ app, bakery, browser }) => {
  const upright = sizes.slice(1, 3)
  const { code, dough } = await readyToRead(bakery)
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  await enrolAndLogOn(tablet, code)
  await tap(page.getByRole('button', { name: new RegExp(`^${dough.code}`) }))
  await tap(page.getByRole('button', { name: 'Take a photo' }))
  await mustBeSound(page, 'photo', upright)
  await context.setOffline(true)
  const buffer = await fromCamera(800, 600)
  await page.getByLabel('Open the camera').setInputFiles({ name: 'loaf.jpg', mimeType: 'image/jpeg', buffer })
  await page.getByRole('img', { name: `Dough ${dough.code}, photo` }).waitFor()
  await mustBeSound(page, 'dough with a photo', upright)
  await tap(page.getByRole('button', { name: 'Kept here' }))
  await mustBeSound(page, 'kept photo', upright)
  await context.close()
})
