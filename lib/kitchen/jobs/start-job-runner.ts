import 'server-only'
import { log } from '../../db/log'
import { nextRoundMs } from './next-round-ms'

export type JobRunner = {
  /** Asks a job that runs to stop at its next step, and begins no other. */
  stop(): void
}

/**
 * Runs the jobs that are due again and again, until it is stopped. It keeps no process alive, and nothing that goes wrong ends it.
 * @param runDue runs what is due, and throws where that could not be found out; its signal is aborted by `stop`
 */
export function startJobRunner(runDue: (signal: AbortSignal) => Promise<void>): JobRunner {
  const stopping = new AbortController()
  let timer: NodeJS.Timeout
  let failures = 0
  const round = async () => {
    try {
      await runDue(stopping.signal)
      failures = 0
    } catch (error) {
      failures += 1
      log.warn({ event: 'jobs-not-run', failures, error })
    }
    if (!stopping.signal.aborted) plan()
  }
  const plan = () => {
    timer = setTimeout(() => void round(), nextRoundMs(failures)).unref()
  }
  plan()
  return {
    stop() {
      stopping.abort()
      clearTimeout(timer)
    },
  }
}
