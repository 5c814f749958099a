import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { gzipSync } from 'node:zlib'
import { buildSync } from 'esbuild'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { buildStation, stationBuild } from '@/lib/ops/build-station'

/** Compressed, of all script above a bare page of the same build: what a tablet loads once for each build. */
const mostKb = 110

let folder: string
let sources: string[]
let files: string[]
beforeAll(() => {
  folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evendough-station-test-'))
  sources = buildStation(folder)
  files = fs.readdirSync(path.join(folder, 'files')).sort()
})
afterAll(() => fs.rmSync(folder, { recursive: true, force: true }))
const kbOf = (script: string | Uint8Array) => gzipSync(script).length / 1000
const textOf = (name: string) => fs.readFileSync(path.join(folder, name), 'utf8')

test('the document names a script and a style that are there', () => {
  const named = [...textOf('document.html').matchAll(/"\/station\/files\/([^"]+)"/g)].map(([, name]) => name)
  expect(named).toHaveLength(2)
  for (const name of named) expect(files).toContain(name)
})

test('the worker keeps each file, the document, and nothing of the API', () => {
  const worker = textOf('worker.js')
  for (const file of files) expect(worker).toContain(`"/station/files/${file}"`)
  expect(worker).toContain('"/station"')
  expect(worker).not.toContain('/api')
})

test('of the words only the tablet’s own are in the script, and nothing of the server', () => {
  const worded = sources.filter((source) => source.startsWith('lib/words/en/'))
  expect(worded).toContain('lib/words/en/station.ts')
  expect(worded.filter((source) => !/\/station(-\w+)?\.ts$/.test(source))).toEqual([])
  expect(
    sources.filter((source) => /^(app|seed)\/|^lib\/(db|auth|ops|ui)\/|node_modules\/(zod|next|pg)\//.test(source)),
  ).toEqual([])
})

test(`all script is at most ${mostKb} kB above a bare page of the same build, compressed`, () => {
  const bare = buildSync({
    ...stationBuild,
    stdin: {
      contents: `import { createRoot } from 'react-dom/client'; createRoot(document.body).render(null)`,
      resolveDir: process.cwd(),
    },
  })
  const bareKb = kbOf(bare.outputFiles[0]?.contents ?? '')
  const kb = files
    .filter((file) => file.endsWith('.js'))
    .reduce((sum, file) => sum + kbOf(fs.readFileSync(path.join(folder, 'files', file))), 0)
  console.log(`${(kb - bareKb).toFixed(1)} kB above ${bareKb.toFixed(1)} kB`)
  expect(bareKb).toBeGreaterThan(30)
  expect(kb - bareKb).toBeGreaterThan(20)
  expect(kb - bareKb).toBeLessThanOrEqual(mostKb)
})

test('what reads codes is loaded with the first scan, and is there without a network', () => {
  const [start = ''] = /[^/"]+\.js/.exec(textOf('document.html')) ?? []
  const readsCodes = (file: string) => textOf(`files/${file}`).includes('WebAssembly')
  const atOnce = [
    start,
    ...Array.from(textOf(`files/${start}`).matchAll(/from ?"[^"]*\/([^"/]+\.js)"/g), ([, file]) => file ?? ''),
  ]
  expect(atOnce.filter(readsCodes)).toEqual([])
  const late = files.filter((file) => file.endsWith('.js') && !atOnce.includes(file))
  expect(late.filter(readsCodes)).toHaveLength(1)
  const program = files.filter((file) => file.endsWith('.wasm'))
  expect(program).toHaveLength(1)
  for (const file of [...late, ...program]) expect(textOf('worker.js')).toContain(`"/station/files/${file}"`)
})

test('its colours are the desk’s', () => {
  const style = files.find((file) => file.endsWith('.css'))
  expect(textOf(`files/${style ?? ''}`)).toMatch(/--color-ember: ?light-dark\(#b93a16, ?#f2743f\)/)
})

test('built again it is the same to the byte', () => {
  const before = [textOf('document.html'), textOf('worker.js')]
  buildStation(folder)
  expect([textOf('document.html'), textOf('worker.js')]).toEqual(before)
  expect(fs.readdirSync(path.join(folder, 'files')).sort()).toEqual(files)
})
