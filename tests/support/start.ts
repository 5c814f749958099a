import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { test as base } from 'playwright/test'
import { findFreePort } from '../../lib/ops/find-free-port'
import { spawnStart, type Started } from '../../lib/ops/spawn-start'

type Fixtures = {
  /** A folder of the test's own. */
  folder: string
  port: number
  /** `npm start` with its data in `data` of that folder; whatever still runs is stopped at the end. */
  start(env?: Record<string, string | undefined>, args?: string[], as?: { uid: number; gid: number }): Started
}

/** Starts as a person makes them, each with what it prints. */
export const test = base.extend<Fixtures>({
  folder: async ({}, use) => {
    const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evendough-start-'))
    fs.chmodSync(folder, 0o755)
    await use(folder)
    fs.rmSync(folder, { recursive: true, force: true })
  },

  port: async ({}, use) => use(await findFreePort()),

  start: async ({ folder, port }, use) => {
    const started: Started[] = []
    await use((env = {}, args = [], as) => {
      const one = spawnStart({ PORT: String(port), EVENDOUGH_DATA: path.join(folder, 'data'), ...env }, args, as)
      started.push(one)
      return one
    })
    for (const one of started) {
      one.child.kill('SIGTERM')
      await one.ended
    }
  },
})

/** What a start prints last. */
export const ready = /Ctrl-C stops it/
