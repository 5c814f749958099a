import { clearOld } from '../keep/clear-old'
import { recall } from '../keep/tablet'
import { hearBook } from './hear-book'
import { listenOnline, readOnline } from './online'
import { refresh } from './refresh'
import { sendOutbox } from './send-outbox'

const everyMs = 30_000

/** Sends and asks at the start, when the network is back, when somebody looks, and every half minute. */
export function keepGoing(): void {
  const now = () => void catchUp()
  now()
  window.addEventListener('online', now)
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') now()
    else void hearBook()
  })
  setInterval(now, everyMs)
  // The book answers again: what waits need not wait for its pause to be over.
  listenOnline(() => {
    if (readOnline()) void sendOutbox()
  })
}

/** Sends what waits, then asks what is to be read now; a book that was started since is asked what it lacks. */
export async function catchUp(): Promise<void> {
  await clearOld(Date.now())
  await sendOutbox()
  await refresh()
  if ((await recall('station'))?.book !== (await recall('compared'))) await sendOutbox()
  await hearBook()
}
