import 'server-only'

/** After a run that failed it is tried again no later than this. */
const againMs = 60 * 60_000

type LastRun = { beganAt: Date; endedAt: Date | null; outcome: 'done' | 'failed' | null }

/**
 * Whether a job is to be begun: it never was, it was cut off, its time has come, it failed an hour ago, or its last begin
 * lies ahead, noted by a clock that was wrong. For whoever holds the lock: without it, one that has no end may be running.
 */
export function isDue({ everyMs }: { everyMs: number }, last: LastRun | null, now: Date): boolean {
  if (last === null || last.endedAt === null || last.beganAt > now) return true
  const waitMs = last.outcome === 'failed' ? Math.min(everyMs, againMs) : everyMs
  return now.getTime() - last.beganAt.getTime() >= waitMs
}
