/** From one look to the next: a second, and longer where looking takes long, so that it takes half of the time. */
const shortestGapMs = 1_000
const longestGapMs = 10_000
const lookShare = 0.5
/** However little is told: it may have been lost on the way, and things fall due by themselves. */
const looksEveryMs = 60_000
/** Without a stream. */
const asksEveryMs = 10_000
/** A stream that was refused, or broke for good, is tried again. */
const triesEveryMs = 30_000
const tickMs = 2_000

/**
 * Looks again whenever the book says so over a stream of server-sent events, and now and then where there is none; only
 * while the page can be seen, so that pages in the back hold no connection. One look at a time.
 * @param address of the stream, asked each time it is opened
 * @param look told whether the book has changed, or only time went by. @returns false where it has to wait; it is asked anew
 * @returns how to stop
 */
export function keepCurrent(address: () => string, look: (isTold: boolean) => Promise<boolean>): () => void {
  let stream: EventSource | null = null
  let triedAt = 0
  let lookedAt = Date.now()
  let gapMs = shortestGapMs
  let isLooking = false
  let isTold = false
  let timer: ReturnType<typeof setTimeout> | undefined

  const isSeen = () => document.visibilityState === 'visible'
  const lookNow = async () => {
    const wasTold = isTold
    isTold = false
    isLooking = true
    lookedAt = Date.now()
    try {
      if (!(await look(wasTold))) isTold ||= wasTold
    } catch {
      // A book that does not answer leaves the page as it is.
      isTold ||= wasTold
    }
    gapMs = Math.min(longestGapMs, Math.max(shortestGapMs, (Date.now() - lookedAt) / lookShare))
    isLooking = false
  }
  const soon = () => {
    timer ??= setTimeout(
      () => {
        timer = undefined
        if (isLooking) soon()
        else if (isSeen()) void lookNow()
      },
      isLooking ? shortestGapMs : Math.max(0, lookedAt + gapMs - Date.now()),
    )
  }
  const hear = () => {
    isTold = true
    soon()
  }
  const close = () => {
    stream?.close()
    stream = null
  }
  const open = () => {
    close()
    triedAt = Date.now()
    const opened = new EventSource(address())
    opened.onmessage = hear
    // Refused, perhaps because nobody is signed in any more: the page finds that out.
    opened.onerror = () => {
      if (opened.readyState === EventSource.CLOSED) soon()
    }
    stream = opened
  }
  const tick = () => {
    if (!isSeen()) return
    if (stream?.readyState !== EventSource.OPEN && Date.now() - triedAt >= triesEveryMs) open()
    const everyMs = stream?.readyState === EventSource.OPEN ? looksEveryMs : asksEveryMs
    if (isTold || Date.now() - lookedAt >= everyMs) soon()
  }
  const turn = () => {
    if (!isSeen()) close()
    else if (stream === null) open()
  }
  const ticking = setInterval(tick, tickMs)
  document.addEventListener('visibilitychange', turn)
  addEventListener('online', soon)
  if (isSeen()) open()
  return () => {
    clearTimeout(timer)
    clearInterval(ticking)
    document.removeEventListener('visibilitychange', turn)
    removeEventListener('online', soon)
    close()
  }
}
