import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { expect, test } from 'vitest'
import { bundleSizeKb } from '@/lib/ops/bench/bundle-size'

test('counts what the files import, each once, and not what nothing of them uses', async () => {
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evendough-bundle-'))
  const long = Array.from({ length: 400 }, (_, i) => ((i * 7919) % 1009).toString(36)).join('')
  fs.writeFileSync(
    path.join(folder, 'base.ts'),
    `export const long: string = '${long}'\nexport const unused = '${long}'\n`,
  )
  fs.writeFileSync(path.join(folder, 'a.ts'), "import { long } from './base'\nexport const a = long.length\n")
  fs.writeFileSync(path.join(folder, 'b.ts'), "import { long } from './base'\nexport const b = long\n")
  fs.writeFileSync(path.join(folder, 'small.ts'), 'export const small = 1\n')
  const [one, both, small] = [
    await bundleSizeKb(['./a.ts'], folder),
    await bundleSizeKb(['./a.ts', './b.ts'], folder),
    await bundleSizeKb(['./small.ts'], folder),
  ]
  fs.rmSync(folder, { recursive: true })
  expect(small).toBeLessThan(0.2)
  expect(one).toBeGreaterThan(0.3)
  expect(both).toBeLessThan(1.5 * one)
})
