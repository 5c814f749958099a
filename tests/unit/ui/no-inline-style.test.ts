import { readdirSync, readFileSync } from 'node:fs'
import path from 'node:path'
import { expect, it } from 'vitest'

/* The content security policy allows no inline styles: a style attribute would silently do nothing. */
const folder = path.join(import.meta.dirname, '../../../lib/ui')
const files = readdirSync(folder, { recursive: true, encoding: 'utf8' }).filter((file) => file.endsWith('.tsx'))

it('there are components to look at', () => {
  expect(files.length).toBeGreaterThan(20)
})

it.each(files)('%s sets no style attribute and no raw HTML', (file) => {
  expect(readFileSync(path.join(folder, file), 'utf8')).not.toMatch(/\bstyle=|<style|dangerouslySetInnerHTML/)
})
