import fs from 'node:fs'
import os from 'node:os'
import path from 'node:path'
import { closeDb } from '../../db/client'
import type { Caller } from '../../kitchen/caller'
import { closePool } from '../../kitchen/heavy/in-pool'
import { builtWorker, ensureBuilt } from '../build'
import { findFreePort } from '../find-free-port'
import { openDatabase } from '../open-database'
import { readOrMakeSecrets } from '../secrets'
import { serveApp } from '../serve'
import { makeDrafts, signInOwner } from './owner'
import { timeStart } from './time-start'

/** The demo bakery, running, with its owner signed in. */
export type Demo = {
  url: string
  /** Its owner, signed in, for commands called from here. */
  owner: Caller
  /** Seconds from `npm start` until the first page answers: in an empty data folder, and each time after that. */
  firstStartS: number
  laterStartsS: readonly number[]
  /** Opens a page as the owner. @returns its HTML, read to the end, or null when it is not answered with 200 */
  openPage(address: string): Promise<string | null>
}

type Step = () => Promise<void> | void

const laterStarts = 3

/** Keeps one demo bakery for all subjects, in a folder of its own that goes with it. */
export function keepDemo(): { open(): Promise<Demo>; close(): Promise<void> } {
  let opened: Promise<Demo> | undefined
  let closed: Promise<void> | undefined
  const closing: Step[] = []
  const asked = new AbortController()
  const closeAll = async () => {
    asked.abort(new Error('Stopped.'))
    // What is being opened notices, so that nothing is opened behind our back.
    await opened?.catch(() => undefined)
    for (const step of closing.reverse()) await step()
  }
  return {
    open: () => (opened ??= openDemo(closing, asked.signal)),
    close: () => (closed ??= closeAll()),
  }
}

/** Starts it as often as is timed, and then serves it from here, where its database is within reach. */
async function openDemo(closing: Step[], asked: AbortSignal): Promise<Demo> {
  await ensureBuilt()
  const folder = fs.mkdtempSync(path.join(os.tmpdir(), 'evendough-bench-'))
  // As root the database runs as another user, who must be able to enter.
  fs.chmodSync(folder, 0o755)
  closing.push(() => fs.rmSync(folder, { recursive: true, force: true }))
  const port = await findFreePort()
  const url = `http://localhost:${port}`
  const start = () => {
    asked.throwIfAborted()
    return timeStart(port, folder, asked)
  }
  const firstStartS = await start()
  const laterStartsS: number[] = []
  for (let i = 0; i < laterStarts; i++) laterStartsS.push(await start())

  const secrets = readOrMakeSecrets(folder)
  const database = await openDatabase({ dataFolder: folder }, secrets)
  closing.push(database.stop)
  asked.throwIfAborted()
  const settings = {
    DATABASE_URL: database.appUrl,
    EVENDOUGH_WORKER: builtWorker,
    NEXTAUTH_SECRET: secrets.authSecret,
    NEXTAUTH_URL: url,
  }
  Object.assign(process.env, settings)
  closing.push(closeDb, closePool)
  const app = await serveApp(port, settings)
  closing.push(app.stop)
  const { caller, cookie } = await signInOwner(path.join(folder, 'first-sign-in.txt'))
  await makeDrafts(caller)
  const openPage = async (address: string) => {
    const response = await fetch(`${url}${address}`, { redirect: 'manual', headers: { Cookie: cookie } })
    const html = await response.text()
    return response.status === 200 ? html : null
  }
  return { url, owner: caller, firstStartS, laterStartsS, openPage }
}
