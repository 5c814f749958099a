import 'server-only'
import os from 'node:os'
import { log } from '../../db/log'
import { Refusal } from '../refusal'
import { heavyPool, NotWorkedOut, TookTooLong, type HeavyPool } from './heavy-pool'
import type { Worked } from './worker'
import { workerFile } from './worker-file'
import type { WorkName, Works } from './works'

/** Nobody looks at an empty page for longer. */
const limitS = 30
/** One core is always left to serve pages. */
const threads = Math.max(1, os.availableParallelism() - 1)
const limits = { threads, limitMs: 1000 * limitS, mostWaiting: 100, mostMemoryMb: 512 }

let open: HeavyPool | undefined

/**
 * Has a work done by a worker thread, so that every other page is served meanwhile. Never inside a transaction: what
 * it rests on is read before, and looked at again, by its hash, in the transaction that writes.
 * @param signal cancels it
 * @throws Refusal 'took-too-long' | 'not-worked-out'; Error where the work itself breaks: a bug
 */
export async function inPool<Name extends WorkName>(
  name: Name,
  asked: Works[Name]['asked'],
  signal?: AbortSignal,
): Promise<Works[Name]['answer']> {
  open ??= heavyPool({ file: workerFile(), ...limits })
  const worked = (await open.run({ name, asked }, signal).catch((error: unknown) => {
    throw refusalOf(name, error)
  })) as Worked<Works[Name]['answer']>
  if (!worked.ok) throw new Error(`${name} broke in its worker: ${worked.bug}`)
  return worked.answer
}

/** Ends the workers, for a process that goes on without them. The next work gets new ones. */
export async function closePool(): Promise<void> {
  const closing = open
  open = undefined
  await closing?.close()
}

function refusalOf(name: WorkName, error: unknown): unknown {
  if (error instanceof TookTooLong) {
    log.warn({ event: 'heavy-too-long', work: name, limitS })
    return new Refusal('took-too-long', { seconds: limitS })
  }
  if (error instanceof NotWorkedOut) {
    log.error({ event: 'heavy-not-worked-out', work: name, error: String(error.cause) })
    return new Refusal('not-worked-out')
  }
  return error
}
