import 'server-only'
import { setTimeout as wait } from 'node:timers/promises'
import { db, type Tx } from './client'
import { readDatabaseFault } from './errors'
import { log } from './log'

/** Thrown when nobody can say whether the work was kept: the connection broke while it was being committed. */
export class UnknownOutcome extends Error {
  constructor(options: ErrorOptions) {
    super('the connection broke during commit', options)
    this.name = 'UnknownOutcome'
  }
}

/** Thrown when the database is overloaded or away and nothing was kept. */
export class DatabaseAway extends Error {
  constructor(options: ErrorOptions) {
    super('the database did not answer; nothing was kept', options)
    this.name = 'DatabaseAway'
  }
}

/** Thrown by work that did its statements without a way back, when one was refused: it is to start again with one. */
export class NeedsWayBack extends Error {}

const mostTries = 6
/** A connection that was cut before the commit kept nothing, so the work may start again on another one. */
const mostTriesWhenGone = 3

/**
 * Runs the work in one READ COMMITTED transaction and gives its answer after the commit. A deadlock, a clash or a
 * connection cut before the commit starts the whole work again, so it must touch nothing but `tx`; so does work that
 * finds that it needs a way back, which it is told from then on.
 * @throws whatever the work throws, after rolling back; UnknownOutcome; DatabaseAway
 */
export async function inTransaction<T>(work: (tx: Tx, needsWayBack: boolean) => Promise<T>): Promise<T> {
  let needsWayBack = false
  for (let attempt = 1; ; attempt++) {
    let atCommit = false
    try {
      return await db().$transaction(async (tx) => {
        atCommit = false
        const answer = await work(tx, needsWayBack)
        atCommit = true
        return answer
      })
    } catch (error) {
      if (error instanceof NeedsWayBack && !needsWayBack) {
        needsWayBack = true
        continue
      }
      const { kind } = readDatabaseFault(error)
      if (kind === 'clash' && attempt < mostTries) {
        log.info({ event: 'transaction-again', attempt })
        await wait(attempt * 10 * (0.5 + Math.random()))
        continue
      }
      if (kind === 'gone' && !atCommit && attempt < mostTriesWhenGone) continue
      if (kind === 'gone' || kind === 'busy')
        throw atCommit ? new UnknownOutcome({ cause: error }) : new DatabaseAway({ cause: error })
      throw error
    }
  }
}

/** Reads, and once more when the connection turns out to have been cut: a restarted database leaves dead ones in the pool. */
export async function readAgainWhenGone<T>(read: () => Promise<T>): Promise<T> {
  try {
    return await read()
  } catch (error) {
    if (readDatabaseFault(error).kind !== 'gone') throw error
    return read()
  }
}
