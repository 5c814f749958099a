import { frameRefusals, reply, replyRefused } from '@/app/api-answer'
import { currentLanguage } from '@/app/language'
import { readJson } from '@/app/read-json'
import { isSameOrigin } from '@/app/same-origin'
import { currentSender } from '@/app/sender'
import { notSignedIn } from '@/app/not-signed-in'
import { sendPhoto } from '@/lib/kitchen/photos/send-photo'

/** A few ids and numbers, written as wordily as JSON allows. */
const mostBytes = 4 * 1024

/**
 * Takes a photo into the book, in pieces. Of a page of ours or of an enrolled tablet, as entries are.
 *
 * Said is `{ id, batchId, piece, takenAt, bytes, hash }`: an id (a UUIDv7) of the sender's own, the piece of the dough or null, and of the
 * file its length and its SHA-256. The answer `{ outcome: 'lacks', pieces }` names the pieces that have not come, from 0; each is
 * put by PUT /api/v1/photos/{id}/pieces/{number}. Then the same is said again, and the answer is `'kept'` with `sentHash`, which is the
 * sender's own, and the `hash` of what stands in the book: the picture is written anew, upright and without what came with it. Saying and
 * sending anything again does nothing twice; whoever sends lets go when `sentHash` came back as kept, and not before. What is not whole
 * after a day begins anew.
 *
 * Status: 200 kept or lacks; 422 refused, of another shape, or no photo; 429 too many; 503 send the same again; 401, 403, 413 and 415
 * as for entries.
 */
export async function POST(request: Request): Promise<Response> {
  if (!isSameOrigin(request)) return reply(403, { refusal: 'other-site' })
  const read = await readJson(request, mostBytes)
  if (!read.ok) return reply(read.status, { refusal: frameRefusals[read.status] })
  const language = await currentLanguage()
  const caller = await currentSender(request)
  if (!caller) return replyRefused(notSignedIn, language)
  const result = await sendPhoto.call(caller, read.value)
  if (!result.ok) return replyRefused(result.refusal, language)
  const { value } = result
  return value.outcome === 'refused'
    ? replyRefused({ code: value.refusal, facts: {}, problems: [] }, language)
    : reply(200, value)
}
