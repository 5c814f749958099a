import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { performance } from 'node:perf_hooks'
import { setTimeout as wait } from 'node:timers/promises'
import { ensureBuilt } from '../build'
import { findFreePort } from '../find-free-port'
import { spawnStart, type Started } from '../spawn-start'
import { signInAsOwner, type SignedIn } from './sign-in'

/** The demo bakery, running, with its owner signed in. */
export type Demo = SignedIn & {
  url: string
  /** Seconds from `npm start` until the first page answers: in an empty data folder, and each time after that. */
  firstStartS: number
  laterStartsS: readonly number[]
}

const laterStarts = 3
const longestStartMs = 15 * 60_000
const betweenLooksMs = 10

/** Keeps one demo bakery for all subjects, in a folder of its own that goes with it. */
export function keepDemo(): { open(): Promise<Demo>; close(): Promise<void> } {
  let opened: Promise<Demo> | undefined
  const closing: (() => Promise<void> | void)[] = []
  return {
    open: () => (opened ??= openDemo(closing)),
    async close() {
      for (let step = closing.pop(); step; step = closing.pop()) await step()
    },
  }
}

async function openDemo(closing: (() => Promise<void> | void)[]): Promise<Demo> {
  await ensureBuilt()
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evendough-bench-'))
  // As root the database runs as another user, who must be able to enter.
  fs.chmodSync(folder, 0o755)
  closing.push(() => fs.rmSync(folder, { recursive: true, force: true }))
  const port = await findFreePort()
  const url = `http://127.0.0.1:${port}`
  let running: Started | undefined
  const stop = async () => {
    running?.child.kill('SIGTERM')
    await running?.ended
  }
  closing.push(stop)
  const seconds: number[] = []
  for (let start = 0; start <= laterStarts; start++) {
    await stop()
    const begun = performance.now()
    running = spawnStart({ PORT: String(port), EVENDOUGH_DATA: folder, EVENDOUGH_URL: undefined })
    await answers(`${url}/sign-in`, running)
    seconds.push((performance.now() - begun) / 1000)
  }
  const [firstStartS, ...laterStartsS] = seconds
  return { url, firstStartS: firstStartS!, laterStartsS, ...(await signInAsOwner(url, path.join(folder, 'first-sign-in.txt'))) }
}

/** Waits until a page answers with 200. @throws Error with what the start said, when it ends before or takes too long */
async function answers(address: string, { child, output }: Started): Promise<void> {
  const deadline = performance.now() + longestStartMs
  while (child.exitCode === null && child.signalCode === null && performance.now() < deadline) {
    const status = await fetch(address).then((response) => response.status, () => undefined)
    if (status === 200) return
    await wait(betweenLooksMs)
  }
  throw new Error(`The demo bakery did not start:\n${output()}`)
}
