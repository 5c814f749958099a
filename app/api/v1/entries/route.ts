import { frameRefusals, reply, replyRefused, statusOf } from '@/app/api-answer'
import { currentLanguage } from '@/app/language'
import { notSignedIn } from '@/app/not-signed-in'
import { readJson } from '@/app/read-json'
import { isSameOrigin } from '@/app/same-origin'
import { currentSender } from '@/app/sender'
import { sendEntriesInput } from '@/lib/kitchen/intake/send-entries.input'
import { takeEntries, type EntryAnswer } from '@/lib/kitchen/intake/take-entries'
import { wordsOfRefusal } from '@/lib/kitchen/words-of-refusal'
import type { Language } from '@/lib/words/words'

/** A hundred of the longest entries, written as wordily as JSON allows, fit in. */
const mostBytes = 256 * 1024

/**
 * Takes entries into the book: `{ "entries": [ … ] }`, 1 to 100 of any kinds, in their order, each kept or refused by
 * itself. Of a page of ours, with its session
 * cookie, or of an enrolled tablet, with its own and the token of whoever is on it in the header `Evendough-Shift`. `app/api/v1/openapi.json` says what an entry and an answer hold.
 *
 * An entry has a `kind`, an `id` (a UUIDv7 of the sender's own) and what its kind asks for. Sending an entry again is
 * safe: the same id with the same content is kept once, answered the same, and writes nothing. A value outside its
 * plausible range is refused as `odd-reading` until somebody looked again and it comes with `confirmed: true`;
 * `confirmed` is no part of the content, and what is outside stays marked whatever comes with it.
 *
 * The answer is `{ "entries": [ … ] }` in the same order. `outcome: 'kept'`: in the book, with the `hash` (SHA-256) of
 * the entry's canonical text. `'aside'`: somebody was faster, so it could not go where it belongs, or the readings of its
 * trial were closed before it came, and it is a proposed amendment; it is kept whole, by id and hash, for somebody to
 * settle or to decide on, and need not be sent again. `'refused'`: nothing of it was kept; `refusal`,
 * `words` and `problems` by field say why. Whoever sends lets go of an entry when its id and its own hash came back, kept
 * or aside, and not before.
 *
 * Status: 200 when any was kept, or they fared differently; when all fared alike 403 (role) or 422 (aside, refused). 401
 * (not signed in), 403 (role, or another site), 503 (the book is away: send again after `Retry-After`), 415 and 400 for
 * what is not JSON, 413 for more than 256 KiB, 422 for another shape: `{ "refusal": … }`, with `words` for a person where it
 * is about them.
 */
export async function POST(request: Request): Promise<Response> {
  if (!isSameOrigin(request)) return reply(403, { refusal: 'other-site' })
  const read = await readJson(request, mostBytes)
  if (!read.ok) return reply(read.status, { refusal: frameRefusals[read.status] })
  const frame = sendEntriesInput.safeParse(read.value)
  if (!frame.success) return reply(422, { refusal: 'wrong-shape' })
  const language = await currentLanguage()
  const caller = await currentSender(request)
  if (!caller) return replyRefused(notSignedIn, language)
  const result = await takeEntries.call(caller, frame.data)
  if (!result.ok) return replyRefused(result.refusal, language)
  const statuses = new Set(
    result.value.entries.map((each) => (each.outcome === 'kept' ? 200 : statusOf(each.refusal.code))),
  )
  const [status = 200] = statuses
  return reply(statuses.size === 1 ? status : 200, {
    entries: result.value.entries.map((each) => inWords(each, language)),
  })
}

function inWords(answer: EntryAnswer, language: Language) {
  if (answer.outcome === 'kept') {
    const { about, ...kept } = answer
    return { ...kept, ...about }
  }
  const { sentence, problems } = wordsOfRefusal(answer.refusal, language)
  const said = { ...answer, refusal: answer.refusal.code, words: sentence }
  return answer.outcome === 'aside' ? said : { ...said, problems }
}
