import { currentCaller } from '@/app/caller'
import { liveAnswer, refuseHead } from '@/app/live-answer'

/**
 * Server-sent events for a page of the desk, each of which says that something of the book has changed, and not what.
 * `?seen=` is how far the record went when the page was made: where it goes further by now, the first comes at once.
 * Status: 401 not signed in, 429 open in too many places, 503 the book is away.
 */
export async function GET(request: Request): Promise<Response> {
  const seen = new URL(request.url).searchParams.get('seen') ?? ''
  return liveAnswer(await currentCaller(), /^\d{1,15}$/.test(seen) ? Number(seen) : null)
}

export const HEAD = refuseHead
