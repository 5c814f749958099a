import { logOff } from './people'
import { sendOutbox } from './send-outbox'

/** Nobody waits longer than this to be logged off. */
const patienceMs = 2_000

/** Logs whoever is on the tablet off, after a try to send what they kept: later it would wait for their PIN. */
export async function leave(): Promise<void> {
  await Promise.race([sendOutbox(), new Promise((resolve) => setTimeout(resolve, patienceMs))])
  await logOff()
}
