import { expect, type Page } from 'playwright/test'
import { keepNumber, openPlace, type Tablet } from './tablet'
import { entriesInBook, logOfTablet } from './tablet-log'

const pieces = [1, 2, 3, 4]

/** How many entries `keepSome` keeps. */
export const keptBySome = pieces.length + 3

/** Keeps one thing of a dough after another, of several kinds, and leaves the tablet at the dough's screen. */
export async function keepSome(tablet: Tablet, code: string): Promise<void> {
  const { page, tap } = tablet
  await openPlace(tablet, code, 'Dough temperature', 'Whole dough')
  await keepNumber(tablet, '26.4')
  // After a piece the next one is open.
  await tap(page.locator('section').filter({ hasText: 'Loaf weight' }).getByRole('button', { name: 'Piece 1' }))
  for (const piece of pieces) {
    await page.getByText(`Loaf weight, Piece ${piece}`).waitFor()
    await keepNumber(tablet, `42${piece}`)
  }
  await tap(page.getByRole('button', { name: 'Something went wrong' }))
  await tap(page.getByRole('button', { name: 'The oven went off' }))
  await page.getByText('Noted here: The oven went off').waitFor()
  await tap(page.getByRole('button', { name: 'Write a note' }))
  await page.getByLabel('Note', { exact: true }).fill('The left deck stayed cold.')
  await tap(page.getByRole('button', { name: 'Keep the note' }))
}

/** The tablet's own log and the database have the very same entries, each once; and the tablet knows it. */
export async function sameEverywhere(page: Page, count: number): Promise<void> {
  const log = await logOfTablet(page)
  expect(log.map(({ counter }) => counter)).toEqual(Array.from({ length: count }, (_, at) => at + 1))
  expect(log.map(({ state }) => state)).toEqual(log.map(() => 'book'))
  expect(await entriesInBook()).toEqual(log.map(({ id, hash }) => `${id} ${hash}`).sort())
}

/** A promise that is kept from without. */
export function openPromise(): { promise: Promise<void>; keep(): void } {
  let keep = () => {}
  const promise = new Promise<void>((resolve) => (keep = resolve))
  return { promise, keep: () => keep() }
}

/** Waits for the tablet to say that all it kept is in the book. */
export async function allInBook(page: Page): Promise<void> {
  await expect(async () => {
    await page.clock.fastForward(61_000)
    await expect(page.getByText('Everything is in the book')).toBeVisible({ timeout: 1_000 })
  }).toPass()
}
