import 'server-only'
import { db } from '../../db/client'
import { holdLock } from '../../db/hold-lock'
import { log } from '../../db/log'
import { isDue } from './is-due'
import type { Job } from './job'

/** Any fixed number: the lock of whoever runs jobs, one at a time in the whole install. */
const jobsLock = 727_274_003

/**
 * Runs the jobs that are due, one after another, unless somebody else of the install is at it. One that throws is noted
 * as failed, and the next one has its turn.
 * @throws when the database is away, or the lock was lost
 */
export async function runDueJobs(q: { jobs: readonly Job[]; now: () => Date; signal: AbortSignal }): Promise<void> {
  if ((await dueOf(q.jobs, q.now())).length === 0) return
  await holdLock(jobsLock, async (lost) => {
    const signal = AbortSignal.any([q.signal, lost])
    // Read again: somebody else may have run them while this waited for a connection.
    for (const job of await dueOf(q.jobs, q.now())) {
      if (signal.aborted) break
      await runOne(job, q.now, signal)
    }
    lost.throwIfAborted()
  })
}

async function dueOf(jobs: readonly Job[], now: Date): Promise<Job[]> {
  const runs = await db().jobRun.findMany({ select: { name: true, beganAt: true, endedAt: true, outcome: true } })
  return jobs.filter((job) => isDue(job, runs.find(({ name }) => name === job.name) ?? null, now))
}

async function runOne({ name, run }: Job, now: () => Date, signal: AbortSignal): Promise<void> {
  const beganAt = now()
  const begun = { beganAt, endedAt: null, outcome: null }
  await db().jobRun.upsert({ where: { name }, create: { name, ...begun }, update: begun })
  let outcome: 'done' | 'failed' = 'done'
  try {
    await run({ now: beganAt, signal })
  } catch (error) {
    // Stopped from outside it has no end: it is begun again as one that was cut off.
    if (signal.aborted) return
    outcome = 'failed'
    log.error({ event: 'job-failed', job: name, error })
  }
  await db().jobRun.updateMany({ where: { name, beganAt }, data: { endedAt: now(), outcome } })
}
