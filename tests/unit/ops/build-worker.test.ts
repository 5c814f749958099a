import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { afterAll, beforeAll, expect, test } from 'vitest'
import { buildWorker } from '@/lib/ops/build-worker'

let folder: string
let sources: string[]
beforeAll(() => {
  folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evendough-worker-test-'))
  sources = buildWorker(path.join(folder, 'new', 'worker.mjs'))
})
afterAll(() => fs.rmSync(folder, { recursive: true, force: true }))

test('it is one file, alone in its folder, that imports nothing but what Node brings', () => {
  expect(fs.readdirSync(path.join(folder, 'new'))).toEqual(['worker.mjs'])
  const text = fs.readFileSync(path.join(folder, 'new', 'worker.mjs'), 'utf8')
  const imported = [...text.matchAll(/^import .*? from "([^"]+)"/gm)].map(([, name]) => name)
  expect(imported.filter((name) => !name?.startsWith('node:') && name !== 'crypto')).toEqual([])
})

test('nothing in it reaches the database, who asks, or the environment', () => {
  expect(sources).toContain('lib/kitchen/results/analyse-trial.ts')
  expect(sources.filter((source) => /^lib\/(db|auth|ops)\/|node_modules\/(pg|@prisma|next|pino)/.test(source))).toEqual(
    [],
  )
})

test('built again it is the same to the byte', () => {
  const file = path.join(folder, 'new', 'worker.mjs')
  const before = fs.readFileSync(file)
  buildWorker(file)
  expect(fs.readFileSync(file).equals(before)).toBe(true)
})
