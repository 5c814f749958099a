import 'server-only'
import type { Caller } from '@/lib/kitchen/caller'
import { followBook, type Follower } from '@/lib/kitchen/live/follow-book'
import { reply, replyRefused } from './api-answer'
import { notSignedIn } from './not-signed-in'

/** Less than any proxy takes for a connection that is dead. */
const heartbeatMs = 15_000
/** Whoever takes in no more than this is gone. */
const mostUnread = 32

const text = new TextEncoder()
const event = text.encode('data: look-again\n\n')
/** A comment, which no page hears of. */
const heartbeat = text.encode(':\n\n')

/**
 * A stream of server-sent events that say 'look again' and nothing else, to whoever may follow the book; null is nobody.
 * It is neither kept, changed nor held back by anything between.
 * @param seen how far the record went when what they look at was made; null has them look at once
 */
export async function liveAnswer(caller: Caller | null, seen: number | null): Promise<Response> {
  const language = caller?.browserLanguage ?? 'en'
  if (!caller) return replyRefused(notSignedIn, language)
  const { body, follower, onGone } = openBody()
  const followed = await followBook(caller, follower, seen)
  if (!followed.ok) {
    follower.end()
    return replyRefused(followed.refusal, language)
  }
  onGone(followed.value.leave)
  return new Response(body, {
    headers: {
      'Content-Type': 'text/event-stream; charset=utf-8',
      'Cache-Control': 'no-store, no-transform',
      // A connection that stays would hold up the end of the process.
      Connection: 'close',
    },
  })
}

/** To a request for the headers alone: nobody would ever read, or leave, the stream. */
export function refuseHead(): Response {
  return reply(405, {}, { Allow: 'GET' })
}

function openBody(): { body: ReadableStream<Uint8Array>; follower: Follower; onGone(leave: () => void): void } {
  let leave: () => void = () => undefined
  let isOver = false
  let out: ReadableStreamDefaultController<Uint8Array> | undefined
  const stop = () => {
    if (isOver) return
    isOver = true
    clearInterval(beating)
    leave()
    out?.close()
  }
  const send = (bytes: Uint8Array) => {
    if (isOver || !out) return
    if ((out.desiredSize ?? 0) <= 0) stop()
    else out.enqueue(bytes)
  }
  const beating = setInterval(() => send(heartbeat), heartbeatMs)
  beating.unref()
  const body = new ReadableStream<Uint8Array>(
    {
      start(controller) {
        out = controller
        // The browser hears at once that it is followed.
        send(heartbeat)
      },
      cancel() {
        out = undefined
        stop()
      },
    },
    { highWaterMark: mostUnread },
  )
  return {
    body,
    follower: { lookAgain: () => send(event), end: stop },
    onGone(whenGone) {
      leave = whenGone
      if (isOver) leave()
    },
  }
}
