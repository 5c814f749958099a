/** Called by the framework once, when the app's process starts: from then on the install's jobs run in it. */
export async function register(): Promise<void> {
  // Said by the framework itself where it builds: its other runtime has no database.
  // eslint-disable-next-line evendough/no-environment
  if (process.env.NEXT_RUNTIME !== 'nodejs') return
  const [{ jobs }, { runDueJobs }, { startJobRunner }] = await Promise.all([
    import('./lib/kitchen/jobs/jobs'),
    import('./lib/kitchen/jobs/run-due-jobs'),
    import('./lib/kitchen/jobs/start-job-runner'),
  ])
  const runner = startJobRunner((signal) => runDueJobs({ jobs, now: () => new Date(), signal }))
  for (const signal of ['SIGINT', 'SIGTERM'] as const) process.once(signal, () => runner.stop())
}
