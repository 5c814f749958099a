import 'server-only'
import { once } from 'node:events'
import { setTimeout as wait } from 'node:timers/promises'
import pg from 'pg'
import { bookChannel } from './book-channel'
import { log } from './log'
import { databaseSettings } from './settings'

export type BookListener = {
  /** Has `hear` called whenever a bakery's book has changed, or may have while nobody listened. @returns how to stop */
  listen(bakeryId: string, hear: () => void): () => void
  /** Stops listening for everybody. */
  close(): Promise<void>
}

const longestConnectMs = 5_000
/** A connection that was lost in silence is found out by asking over it. */
const askEveryMs = 30_000
const longestAskMs = 5_000
const shortestPauseMs = 250
const longestPauseMs = 15_000

let own: BookListener | undefined

/** The process's one listener. It is connected from the first who listens on, so that a build needs no database. */
export function bookListener(): BookListener {
  own ??= openBookListener(databaseSettings().url)
  return own
}

/**
 * Listens over a connection of its own, again and again where it breaks. After each beginning everybody is told: what was
 * said while nobody listened is lost.
 * @param url of the database; behind a pooler, of one that keeps a session
 */
export function openBookListener(url: string, patience = { askEveryMs, shortestPauseMs }): BookListener {
  const hearers = new Map<string, Set<() => void>>()
  const closing = new AbortController()
  let running: Promise<void> | undefined
  const tell = (bakeryId: string) => {
    for (const hear of [...(hearers.get(bakeryId) ?? [])]) hear()
  }
  const tellAll = () => {
    for (const bakeryId of [...hearers.keys()]) tell(bakeryId)
  }
  const run = async () => {
    let failures = 0
    while (!closing.signal.aborted) {
      const error = await listenOnce(url, patience.askEveryMs, closing.signal, tell, () => {
        failures = 0
        tellAll()
      })
      if (closing.signal.aborted) return
      log.warn({ event: 'book-listener', failures, error: error.message })
      const pauseMs = Math.min(longestPauseMs, patience.shortestPauseMs * 2 ** failures)
      failures += 1
      await wait(pauseMs, undefined, { signal: closing.signal, ref: false }).catch(() => undefined)
    }
  }
  const listener: BookListener = {
    listen(bakeryId, hear) {
      const ofBakery = hearers.get(bakeryId) ?? new Set()
      hearers.set(bakeryId, ofBakery.add(hear))
      running ??= run()
      return () => {
        ofBakery.delete(hear)
        if (ofBakery.size === 0) hearers.delete(bakeryId)
      }
    },
    async close() {
      closing.abort()
      await running
      if (own === listener) own = undefined
    },
  }
  return listener
}

/** Listens until the connection breaks or is to end. @returns why it ended */
async function listenOnce(
  url: string,
  askMs: number,
  closing: AbortSignal,
  tell: (bakeryId: string) => void,
  onBegun: () => void,
): Promise<Error> {
  const client = new pg.Client({
    connectionString: url,
    application_name: 'evendough-listener',
    connectionTimeoutMillis: longestConnectMs,
    query_timeout: longestAskMs,
    keepAlive: true,
  })
  const over = new AbortController()
  const end = (error: Error) => over.abort(error)
  const stop = () => end(new Error('listening ended'))
  // Without a listener a broken connection would end the process.
  client.on('error', end)
  client.on('end', () => end(new Error('the connection ended')))
  client.on('notification', ({ payload }) => {
    if (payload !== undefined) tell(payload)
  })
  closing.addEventListener('abort', stop)
  const asking = setInterval(() => void client.query('SELECT 1').catch(end), askMs)
  asking.unref()
  try {
    await client.connect()
    await client.query(`LISTEN ${bookChannel}`)
    onBegun()
    if (!over.signal.aborted) await once(over.signal, 'abort')
    return asError(over.signal.reason)
  } catch (error) {
    return asError(error)
  } finally {
    clearInterval(asking)
    closing.removeEventListener('abort', stop)
    // One that does not answer any more is not waited for.
    await Promise.race([client.end().catch(() => undefined), wait(longestAskMs, undefined, { ref: false })])
  }
}

function asError(error: unknown): Error {
  return error instanceof Error ? error : new Error(String(error))
}
