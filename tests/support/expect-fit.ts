import fs from 'node:fs'
import { createRequire } from 'node:module'
import { expect, type Page } from 'playwright/test'

const axeSource = fs.readFileSync(createRequire(import.meta.url).resolve('axe-core/axe.min.js'), 'utf8')
declare const axe: { run(options: object): Promise<{ violations: { id: string; nodes: { html: string }[] }[] }> }

export const screenSizes = [
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

/** A tablet's screen fits a finger and reads in glare, in light and dark, at every size or at some. */
export async function expectFit(page: Page, name: string, at = screenSizes): Promise<void> {
  await page.evaluate(axeSource)
  for (const size of at)
    for (const colorScheme of ['light', 'dark'] as const) {
      await page.setViewportSize(size)
      await page.emulateMedia({ colorScheme })
      expect(await faultsOf(page), `${name}, ${size.width}, ${colorScheme}`).toEqual([])
    }
}
