import fs from 'node:fs'
import { createRequire } from 'node:module'
import { type Page } from 'playwright/test'
import pg from 'pg'
import { wordsIn } from '../../lib/words/words'
import { expect, test } from '../support/app'
import { everyPage } from '../support/walks/all'

const axeSource = fs.readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

type AxeResult = { violations: { id: string; nodes: { html: string }[] }[] }
declare const axe: { run(options: object): Promise<AxeResult> }

const everyRule = ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice']
const sizes = [
  { width: 1440, height: 900 },
  { width: 768, height: 1024 },
  { width: 375, height: 800 },
]

/** What axe finds by these rules, each with the pieces of the page that it is about. */
async function findingsOf(page: Page, runOnly: readonly string[]): Promise<string[]> {
  const { violations } = await page.evaluate((rules) => axe.run({ runOnly: rules }), [...runOnly])
  return violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' | ')}`)
}

/** The longer texts of the words, as a page writes them whether as HTML or as data. */
const everyText = textsIn(wordsIn('en-XA')).filter((text) => text.length > 30 && !/["'\\<>&]/.test(text))

function textsIn(words: unknown): string[] {
  if (typeof words === 'string') return [words]
  return words !== null && typeof words === 'object' ? Object.values(words).flatMap(textsIn) : []
}

for (const walk of everyPage) {
  test(`${walk.route} has nothing that axe finds, at desk and at tablet size, in light and dark`, async ({
    as,
    bakery,
    app,
  }) => {
    const page = await as(bakery.owner, { colorScheme: 'light', bypassCSP: true })
    await page.goto(await walk.address({ bakery, neighbour: bakery, look: app.look }))
    await page.evaluate(axeSource)
    for (const size of sizes) {
      await page.setViewportSize(size)
      expect(await findingsOf(page, everyRule), `${size.width} px`).toEqual([])
      const overflow = await page.evaluate(
        () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
      )
      expect(overflow, `${size.width} px`).toBe(0)
    }
    // The dark theme has other colours, and nothing else that is its own.
    await page.emulateMedia({ colorScheme: 'dark' })
    for (const size of sizes) {
      await page.setViewportSize(size)
      expect(await findingsOf(page, ['color-contrast']), `dark, ${size.width} px`).toEqual([])
    }
  })

  test(`${walk.route} takes every word from the words files, and every sentence whole`, async ({ as, bakery, app }) => {
    const page = await as(bakery.owner, { locale: 'en-XA' })
    const response = await page.goto(await walk.address({ bakery, neighbour: bakery, look: app.look }))
    // Words that no part of the page reads were handed to the browser with all others.
    const html = (await response?.text()) ?? ''
    expect(everyText.filter((text) => html.includes(text)).length).toBeLessThan(everyText.length / 5)
    expect(await page.evaluate(wordsNotMarked, await textsOfBakery(app.look, bakery.bakeryId))).toEqual([])
  })
}

/**
 * Every text with a letter in it that people, or commands, put into a bakery's tables: longest first, so that a part
 * does not eat a whole. A bare number would eat a part of a date.
 */
async function textsOfBakery(look: pg.Pool, bakeryId: string): Promise<string[]> {
  const { rows: columns } = await look.query<{ table: string; column: string }>(
    `SELECT c.table_name AS table, c.column_name AS column FROM information_schema.columns c
     JOIN information_schema.columns b ON b.table_schema = c.table_schema AND b.table_name = c.table_name AND b.column_name = 'bakery_id'
     WHERE c.table_schema = 'public' AND c.data_type IN ('text', 'character')`,
  )
  const texts = new Set<string>()
  for (const { table, column } of columns) {
    const { rows } = await look.query<{ text: string | null }>(
      `SELECT DISTINCT ${pg.escapeIdentifier(column)} AS text FROM ${pg.escapeIdentifier(table)} WHERE bakery_id = $1`,
      [bakeryId],
    )
    for (const { text } of rows)
      for (const line of text?.split('\n') ?? [])
        if (line.trim().length > 1 && /\p{L}/u.test(line)) texts.add(line.trim())
  }
  return [...texts].sort((a, b) => b.length - a.length)
}

/** Texts of the page that hold letters outside the pseudo-language's brackets, apart from what people typed. */
function wordsNotMarked(typed: string[]): string[] {
  // What is the same in every language: dates, codes of money and zones, units, hashes, the record's own names.
  const same =
    /\d{1,2} \w{3} \d{4}|Mozilla|^people\.|^[A-Z]{3}$|^\w+(\/[\w -]+)+$|^UTC$|^[0-9a-f]{8,64}$|^[\d.,\s×+−-]*(kg|g|mL|mL\/g|°C|lb|oz|min|ppm)$|[a-z]+ [a-z_]+, [a-z]+/
  const found: string[] = []
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
  while (walker.nextNode()) {
    const text = walker.currentNode.textContent?.trim() ?? ''
    const parent = walker.currentNode.parentElement
    if (!text || parent?.closest('script, style, [translate=no]')) continue
    let outside = text
    for (const part of typed) outside = outside.replaceAll(part, '')
    // What a text holds is a name: a sentence within a sentence was put together of pieces.
    if (/⟦[^⟧]*⟦[^⟦⟧]*[.!?]·+⟧/.test(text)) found.push(text)
    // A text may hold a name as a fact: from the inside out.
    while (/⟦[^⟦⟧]*⟧/.test(outside)) outside = outside.replace(/⟦[^⟦⟧]*⟧/g, '')
    outside = outside.trim()
    if (/\p{L}{2}/u.test(outside) && !same.test(outside)) found.push(outside)
  }
  return found
}
