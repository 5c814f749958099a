import 'server-only'
import { jobs } from './jobs'
import { runDueJobs } from './run-due-jobs'
import { startJobRunner } from './start-job-runner'

/** From now on the install's jobs run in this process, until it is asked to stop. */
export function runJobsInThisProcess(): void {
  const runner = startJobRunner((signal) => runDueJobs({ jobs, now: () => new Date(), signal }))
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => runner.stop())
}
