import { expect, type Browser, type BrowserContext, type Locator, type Page } from 'playwright/test'
import { beginBatch } from '../../lib/kitchen/shifts/begin-batch'
import { makeStation } from '../../lib/kitchen/stations/make-station'
import { makeApprovedTrial } from './approved-trial'
import { callerOf, valueOf, type TestBakery } from './bakery'
import { givePin, testPin } from './stations'

/** Longer than two taps that count as one. */
const betweenTapsMs = 700

export type Tablet = {
  context: BrowserContext
  page: Page
  tap(what: Locator): Promise<void>
  /** What went wrong in the page itself: a network that is away is no fault of it. */
  faults: string[]
}

/** A tablet that is touched, with a clock that can be moved on: nothing waits for a tap to count as a second one. */
export async function openTablet(
  browser: Browser,
  url: string,
  viewport = { width: 1080, height: 810 },
): Promise<Tablet> {
  return tabletIn(await browser.newContext({ baseURL: url, hasTouch: true, viewport }))
}

/** As `openTablet`, in a browser's context that is there already. */
export async function tabletIn(context: BrowserContext): Promise<Tablet> {
  const page = context.pages()[0] ?? (await context.newPage())
  await page.clock.install()
  const faults: string[] = []
  context.on('weberror', (error) => faults.push(error.error().message))
  context.on('console', (message) => {
    if (/Content Security Policy/i.test(message.text())) faults.push(message.text())
  })
  return {
    context,
    page,
    faults,
    async tap(what) {
      await page.clock.fastForward(betweenTapsMs)
      await what.tap()
    },
  }
}

/** The code of a new station, and a dough that was begun: what a tablet needs to read something. */
export async function readyToRead(bakery: TestBakery) {
  const now = new Date()
  const { code, stationId } = valueOf(
    await makeStation.call(callerOf(bakery.owner.sessionSecret, now), { name: 'Bench' }),
  )
  await givePin(bakery.early, testPin, now)
  const trial = await makeApprovedTrial(bakery, { now })
  const [dough] = trial.batches
  if (!dough) throw new Error('a trial has doughs')
  const begun = { batchId: dough.batchId, seenRevision: 1, cleanDownDone: false }
  valueOf(await beginBatch.call(callerOf(bakery.early.sessionSecret, now), begun))
  return { code, stationId, trial, dough }
}

/** Enrols the tablet by its code and logs the early shift on. */
export async function enrolAndLogOn({ page, tap }: Pick<Tablet, 'page' | 'tap'>, code: string): Promise<void> {
  await page.goto('/station')
  await page.getByLabel('Code').fill(code)
  await tap(page.getByRole('button', { name: 'Enrol' }))
  await tap(page.getByRole('button', { name: 'Go on' }))
  await logOn({ page, tap })
  // The doughs came over the network, so it may be cut from now on.
  await page.getByText(/^As fetched at/).waitFor()
}

/** Logs the early shift on by their PIN. */
export async function logOn({ page, tap }: Pick<Tablet, 'page' | 'tap'>): Promise<void> {
  await tap(page.getByRole('button', { name: /^Esi/ }))
  await page.getByRole('heading', { name: 'PIN of Esi' }).waitFor()
  await typePin({ page })
  await page.getByText('On it: Esi').waitFor()
}

/** Types the PIN that everybody has here. */
export async function typePin({ page }: Pick<Tablet, 'page'>): Promise<void> {
  await page.clock.fastForward(betweenTapsMs)
  for (const digit of testPin) await page.getByRole('button', { name: digit, exact: true }).tap()
}

/** Opens a place of a dough, from its list. */
export async function openPlace({ page, tap }: Tablet, code: string, measure: string, place: string): Promise<void> {
  await tap(page.getByRole('button', { name: new RegExp(`^${code}`) }))
  await tap(page.locator('section').filter({ hasText: measure }).getByRole('button', { name: place }))
}

const keyNames: Readonly<Record<string, string>> = { '.': 'Decimal mark', '-': 'Above or below zero' }

/** Types a number. */
export async function typeNumber({ page }: Pick<Tablet, 'page'>, digits: string): Promise<void> {
  for (const digit of digits) {
    await page.clock.fastForward(betweenTapsMs)
    await page.getByRole('button', { name: keyNames[digit] ?? digit, exact: true }).tap()
  }
}

/** Types a number and keeps it. */
export async function keepNumber({ page, tap }: Tablet, digits: string): Promise<void> {
  await typeNumber({ page }, digits)
  await tap(page.getByRole('button', { name: /^Keep / }))
}

/** Waits until something half typed is on the tablet's disk, which is a moment after it is on its screen. */
export async function untilDraft(page: Page, text: string): Promise<void> {
  const drafts = () =>
    page.evaluate(async () => {
      const database = await new Promise<IDBDatabase>((resolve, reject) => {
        const opening = indexedDB.open('evendough-station')
        opening.onsuccess = () => resolve(opening.result)
        opening.onerror = () => reject(new Error('the store does not open'))
      })
      const all = database.transaction('drafts').objectStore('drafts').getAll()
      await new Promise((resolve) => (all.onsuccess = resolve))
      database.close()
      return (all.result as { text: string }[]).map((draft) => draft.text)
    })
  await expect.poll(drafts).toContainEqual(expect.stringContaining(text))
}

/** Lets nothing onto the tablet's disk, as where it is slow, until it is let go. */
export async function holdDisk(page: Page): Promise<() => Promise<void>> {
  const held = await page.evaluateHandle(async () => {
    const database = await new Promise<IDBDatabase>((resolve, reject) => {
      const opening = indexedDB.open('evendough-station')
      opening.onsuccess = () => resolve(opening.result)
      opening.onerror = () => reject(new Error('the store does not open'))
    })
    const held = { isHeld: true }
    const stores = [...database.objectStoreNames]
    const all = database.transaction(stores, 'readwrite').objectStore(stores[0] ?? '')
    await new Promise<void>((resolve) => {
      const again = () => {
        if (held.isHeld) all.count().onsuccess = again
        else database.close()
        resolve()
      }
      all.count().onsuccess = again
    })
    return held
  })
  return () => held.evaluate((each) => void (each.isHeld = false))
}
