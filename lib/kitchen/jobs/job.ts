import 'server-only'
import type { JobName } from '../../auth/actor'

/** The works that nobody has to ask for. */
export type OwnJobName = Exclude<JobName, 'owner-link'>

/** A work that the install does by itself. Its run is safe to repeat, and to be ended in the middle. */
export type Job = {
  name: OwnJobName
  /** How long after it was begun it is begun again. */
  everyMs: number
  /** @param q.signal aborted when it is to stop: the app ends, or the lock is lost. It is looked at between steps. */
  run(q: { now: Date; signal: AbortSignal }): Promise<void>
}
