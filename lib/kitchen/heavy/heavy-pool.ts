import 'server-only'
import pLimit from 'p-limit'
import { Piscina } from 'piscina'

export type HeavyPool = {
  /**
   * Has something worked out by a worker, in its turn.
   * @param signal cancels it, wherever it stands; the worker that is at it ends
   * @throws TookTooLong, NotWorkedOut, the reason of the signal
   */
  run(asked: unknown, signal?: AbortSignal): Promise<unknown>
  /** Ends every worker. What is under way ends with NotWorkedOut. */
  close(): Promise<void>
}

/** It was not done within the time that anybody waits for it, its turn included. */
export class TookTooLong extends Error {
  override readonly name = 'TookTooLong'
}

/** The worker came to an end, or too many wait already. */
export class NotWorkedOut extends Error {
  override readonly name = 'NotWorkedOut'
}

/**
 * Makes a pool of worker threads that run the default export of one file. They know nothing of the environment, where
 * the database's address is.
 * @param q.file absolute path
 * @param q.threads > 0
 * @param q.limitMs from asking until the answer
 * @param q.mostWaiting that may wait for a worker, > 0
 * @param q.mostMemoryMb of one worker's data; beyond it that worker ends, and the app does not
 */
export function heavyPool(q: {
  file: string
  threads: number
  limitMs: number
  mostWaiting: number
  mostMemoryMb: number
}): HeavyPool {
  const pool = new Piscina({
    filename: q.file,
    minThreads: 1,
    maxThreads: q.threads,
    idleTimeout: 30_000,
    resourceLimits: { maxOldGenerationSizeMb: q.mostMemoryMb },
    env: {},
    // What was preloaded into the app, such as its tie to its parent process, is not for its threads.
    execArgv: [],
    recordTiming: false,
  })
  // A worker that ends before it takes its first work: the pool leaves that work waiting for ever.
  let begun = new AbortController()
  pool.on('error', (error) => {
    begun.abort(error)
    begun = new AbortController()
  })
  // The pool's own queue keeps no order, and no bound, among what can be cancelled.
  const inTurn = pLimit(q.threads)
  return {
    async run(asked, signal) {
      signal?.throwIfAborted()
      if (inTurn.pendingCount >= q.mostWaiting)
        throw new NotWorkedOut('too many wait', { cause: `${q.mostWaiting} wait already` })
      const limit = AbortSignal.timeout(q.limitMs)
      const end = signal ? AbortSignal.any([signal, limit]) : limit
      try {
        return await Promise.race<unknown>([
          inTurn(() => pool.run(asked, { signal: AbortSignal.any([end, begun.signal]) })),
          atAbortOf(end),
        ])
      } catch (error) {
        signal?.throwIfAborted()
        if (limit.aborted) throw new TookTooLong(`not done in ${q.limitMs} ms`)
        throw new NotWorkedOut('the worker gave no answer', { cause: error })
      }
    },
    close: () => pool.destroy(),
  }
}

/** Whoever waits for a turn need not wait for it to hear that time is up. */
function atAbortOf(signal: AbortSignal): Promise<never> {
  return new Promise((_, reject) =>
    signal.addEventListener('abort', () => reject(new Error('aborted')), { once: true }),
  )
}
