/** Called by the framework once, when the app's process starts: from then on the install's jobs run in it. */
export async function register(): Promise<void> {
  // Said by the framework itself where it builds: its other runtime has no database.
  // eslint-disable-next-line evendough/no-environment
  if (process.env.NEXT_RUNTIME !== 'nodejs') return
  const { runJobsInThisProcess } = await import('./lib/kitchen/jobs/run-jobs-in-this-process')
  runJobsInThisProcess()
}
