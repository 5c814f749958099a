import { recall } from '../keep/tablet'
import { refresh } from './refresh'

/** From one fetch to the next: a second, and longer where fetching takes long, so that it takes a fifth of the time. */
const shortestGapMs = 1_000
const longestGapMs = 10_000
const fetchShare = 0.2

let stream: EventSource | null = null
let gapMs = shortestGapMs
let fetchedAt = 0
let isFetching = false
let timer: ReturnType<typeof setTimeout> | undefined

/**
 * Has the book say when it has changed, and fetches then what is to be read. Called again and again: it opens what was
 * shut, and shuts it while nobody can see the tablet's page, or it is no station any more.
 */
export async function hearBook(): Promise<void> {
  const isWanted =
    document.visibilityState === 'visible' &&
    (await recall('station')) !== undefined &&
    (await recall('withdrawn')) !== true
  if (!isWanted) {
    stream?.close()
    stream = null
    return
  }
  if (stream && stream.readyState !== EventSource.CLOSED) return
  stream = new EventSource('/api/v1/station/live')
  stream.onmessage = soon
}

function soon(): void {
  timer ??= setTimeout(
    () => {
      timer = undefined
      if (isFetching) soon()
      else void fetchNow()
    },
    isFetching ? shortestGapMs : Math.max(0, fetchedAt + gapMs - Date.now()),
  )
}

async function fetchNow(): Promise<void> {
  isFetching = true
  fetchedAt = Date.now()
  try {
    await refresh()
  } finally {
    gapMs = Math.min(longestGapMs, Math.max(shortestGapMs, (Date.now() - fetchedAt) / fetchShare))
    isFetching = false
  }
}
