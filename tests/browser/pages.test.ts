import fs from 'node:fs'
import { createRequire } from 'node:module'
import { expect, test } from '../support/app'
import { everyPage } from '../support/walks/all'

const axeSource = fs.readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')

type AxeResult = { violations: { id: string; nodes: { html: string }[] }[] }
declare const axe: { run(options: object): Promise<AxeResult> }

for (const walk of everyPage) {
  for (const scheme of ['light', 'dark'] as const) {
    test(`${walk.route} in ${scheme} has nothing that axe finds, at desk and at tablet size`, async ({ as, bakery, app }) => {
      const page = await as(bakery.owner, { colorScheme: scheme, bypassCSP: true })
      await page.goto(await walk.address({ bakery, neighbour: bakery, look: app.look }))
      for (const size of [{ width: 1440, height: 900 }, { width: 768, height: 1024 }, { width: 375, height: 800 }]) {
        await page.setViewportSize(size)
        await page.evaluate(axeSource)
        const { violations } = await page.evaluate(() => axe.run({ runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] }))
        expect(violations.map(({ id, nodes }) => `${id}: ${nodes.map((node) => node.html).join(' | ')}`)).toEqual([])
        const overflow = await page.evaluate(() => document.documentElement.scrollWidth - document.documentElement.clientWidth)
        expect(overflow, `${size.width} px`).toBe(0)
      }
    })
  }

  test(`${walk.route} takes every word from the words files`, async ({ as, bakery, app }) => {
    const page = await as(bakery.owner, { locale: 'en-XA' })
    await page.goto(await walk.address({ bakery, neighbour: bakery, look: app.look }))
    expect(await page.evaluate(wordsNotMarked)).toEqual([])
  })
}

/** Texts of the page that hold letters outside the pseudo-language's brackets, apart from what people typed. */
function wordsNotMarked(): string[] {
  const typed = /Mill Row|Olga|Henk|Esi|Lars|Planted|Walk|@|\d{1,2} \w{3} \d{4}|Mozilla|^test$|^people\.|^[A-Z]{3}$|^\w+(\/[\w -]+)+$|^UTC$|Wheat flour|^[\d.,\s]*(kg|g|mL|°C|lb|oz)$/
  const found: string[] = []
  const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT)
  while (walker.nextNode()) {
    const text = walker.currentNode.textContent?.trim() ?? ''
    const parent = walker.currentNode.parentElement
    if (!text || parent?.closest('script, style, [translate=no]')) continue
    // A text may hold another one as a fact: from the inside out.
    let outside = text
    while (/⟦[^⟦⟧]*⟧/.test(outside)) outside = outside.replace(/⟦[^⟦⟧]*⟧/g, '')
    outside = outside.trim()
    if (/\p{L}{2}/u.test(outside) && !typed.test(outside)) found.push(outside)
  }
  return found
}
