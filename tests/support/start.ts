import { execFileSync } from 'node:child_process'
import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { expect, test as base } from 'playwright/test'
import { findFreePort } from '../../lib/ops/find-free-port'
import { spawnStart, type Started } from '../../lib/ops/spawn-start'
import { postmasterOf } from './look-into'

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

/**
 * Kills a start as a power cut would, without a word to anybody: itself, the app and the database, at one moment. Waits until
 * none of them is left.
 */
export async function cutPower(one: Started, data: string): Promise<void> {
  const children = new Map<number, number[]>()
  for (const line of execFileSync('ps', ['-e', '-o', 'pid=,ppid='], { encoding: 'utf8' }).trim().split('\n')) {
    const [pid, parent] = line.trim().split(/\s+/).map(Number) as [number, number]
    children.set(parent, [...(children.get(parent) ?? []), pid])
  }
  const under = (pid: number): number[] => [pid, ...(children.get(pid) ?? []).flatMap(under)]
  const all = [...new Set([one.child.pid!, postmasterOf(data).pid].flatMap(under))]
  for (const pid of all) kill(pid, 'SIGKILL')
  await one.ended
  await expect.poll(() => all.filter((pid) => kill(pid, 0) && !isZombie(pid))).toEqual([])
}

/** @returns whether there was somebody to tell */
function kill(pid: number, signal: 'SIGKILL' | 0): boolean {
  try {
    return process.kill(pid, signal)
  } catch {
    return false
  }
}

/** Dead, and not yet asked after by whoever started it. */
function isZombie(pid: number): boolean {
  try {
    return execFileSync('ps', ['-o', 'stat=', '-p', String(pid)], { encoding: 'utf8' }).startsWith('Z')
  } catch {
    return true
  }
}
