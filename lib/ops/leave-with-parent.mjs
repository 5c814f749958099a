// Preload for a child process with an IPC channel (`node --import ./lib/ops/leave-with-parent.mjs …`): when the
// parent is gone, however it ended, the child goes too and leaves no server and no half a test run behind.
const graceMs = 10_000

if (process.channel) {
  process.once('disconnect', () => {
    // As if somebody had asked it to end, so that the program can clean up; and an end to that, if it does not.
    process.kill(process.pid, 'SIGTERM')
    setTimeout(() => process.exit(1), graceMs).unref()
  })
  // The channel alone must not keep a program alive that is done …
  process.channel.unref()
  // … but a program's own workers live by theirs, so they do not inherit this.
  const at = process.execArgv.findIndex((argument) => argument.includes('leave-with-parent'))
  if (at > 0) process.execArgv.splice(at - 1, 2)
}
