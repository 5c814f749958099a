import { randomBytes } from 'node:crypto'
import { gzipSync } from 'node:zlib'
import { expect, test } from 'vitest'
import { scriptSizer, scriptSources } from '../../../../lib/ops/bench/script-size'

const page = (...sources: string[]) =>
  `<html><head>${sources.map((source) => `<script async="" src="${source}" nonce="n"></script>`).join('')}</head><script>inline()</script></html>`

test('a page loads each of its files once, and none that only browsers without modules load', () => {
  const html = `${page('/a.js', '/b.js', '/a.js')}<script src="/old.js" noModule=""></script><link rel="preload" as="script" href="/c.js"/>`
  expect(scriptSources(html)).toEqual(['/a.js', '/b.js'])
})

test('its size is the sum of the files, each compressed by itself, in units of 1000 bytes', async () => {
  const files: Record<string, Uint8Array> = {
    '/plain.js': Buffer.from('bake();'.repeat(5_000)),
    '/dense.js': randomBytes(4_000),
  }
  const fetched: string[] = []
  const sizeOf = scriptSizer(async (source) => {
    fetched.push(source)
    return files[source]!
  })
  const [plain, dense] = [gzipSync(files['/plain.js']!).length, gzipSync(files['/dense.js']!).length]
  expect(plain).toBeLessThan(1_000)
  expect(dense).toBeGreaterThanOrEqual(4_000)
  expect(await sizeOf(page('/plain.js', '/dense.js'))).toBe((plain + dense) / 1000)
  expect(await sizeOf(page('/dense.js'))).toBe(dense / 1000)
  expect(await sizeOf(page())).toBe(0)
  expect(fetched).toEqual(['/plain.js', '/dense.js'])
})
