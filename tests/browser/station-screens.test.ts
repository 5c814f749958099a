import fs from 'node:fs'
import { createRequire } from 'node:module'
import type { Page } from 'playwright/test'
import { expect, test } from '../support/app'
import { addEquipment } from '../../lib/kitchen/stores/add-equipment'
import { callerOf, valueOf } from '../support/bakery'
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

test('every screen fits a finger, reads in glare, in light and dark, either way up', async ({
  app,
  bakery,
  browser,
}) => {
  test.setTimeout(240_000)
  const { code, dough } = await readyToRead(bakery)
  await receiveLots(bakery, 'Wheat flour', [{ code: 'F-1' }, { code: 'F-2', bestBefore: '2026-02-03' }])
  const head = callerOf(bakery.head.sessionSecret, new Date())
  valueOf(await addEquipment.call(head, { kind: 'scale', name: 'Bench', note: '', mostG: 5000, resolutionG: 1 }))
  valueOf(await addEquipment.call(head, { kind: 'thermometer', name: 'Probe', note: '', resolutionC: 0.1 }))
  const tablet = await openTablet(browser, app.url)
  const { page, context, tap } = tablet
  const look = async (name: string) => {
    await page.evaluate(axeSource)
    for (const size of sizes)
      for (const colorScheme of ['light', 'dark'] as const) {
        await page.setViewportSize(size)
        await page.emulateMedia({ colorScheme })
        expect(await faultsOf(page), `${name}, ${size.width}, ${colorScheme}`).toEqual([])
      }
  }
  await page.goto('/station')
  await page.getByLabel('Code').waitFor()
  await look('enrol')
  await enrolAndLogOn(tablet, code)
  await page.getByRole('button', { name: new RegExp(`^${dough.code}`) }).waitFor()
  await look('doughs')
  await tap(page.getByRole('button', { name: /^Checks of the day/ }))
  await tap(page.getByRole('button', { name: /^Bench/ }))
  await look('test weight')
  await tap(page.getByRole('button', { name: 'All checks' }))
  await tap(page.getByRole('button', { name: /^Probe/ }))
  await typeNumber(tablet, '2')
  await look('ice')
  await tap(page.getByRole('button', { name: 'Keep 2 °C' }))
  await look('failing')
  await tap(page.getByRole('button', { name: 'Keep 2 °C: it failed' }))
  await page.getByRole('button', { name: /Failed/ }).waitFor()
  await look('checks')
  await tap(page.getByRole('button', { name: 'All doughs' }))
  await look('doughs with a failed check')
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
