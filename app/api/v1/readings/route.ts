import { currentCaller } from '@/app/caller'
import { currentLanguage } from '@/app/language'
import { readJson } from '@/app/read-json'
import { isSameOrigin } from '@/app/same-origin'
import type { RefusalCode } from '@/lib/kitchen/messages'
import { correctReading } from '@/lib/kitchen/readings/correct-reading'
import { logReading } from '@/lib/kitchen/readings/log-reading'
import { sendReadingsInput } from '@/lib/kitchen/readings/send-readings.input'
import { wordsOfRefusal } from '@/lib/kitchen/words-of-refusal'
import type { SentReading } from './sent-reading'

/** A hundred of the longest entries, written as wordily as JSON allows, fit in. */
const mostBytes = 256 * 1024

/**
 * Takes readings into the book: `{ "readings": [ … ] }`, 1 to 100 of them, worked off one by one in their order, each
 * kept or refused by itself. Of a page of ours, with its session cookie.
 *
 * An entry logs a reading (`id`, `batchId`, `measureId`, `piece`, `factorLevel`, `repeat`, `value`, `unit`, `takenAt`:
 * see log-reading.input.ts), or corrects one when it has `supersedesId` (`id`, `supersedesId`, `piece`, `repeat`,
 * `value`, `unit`, `reason`: see correct-reading.input.ts). `id` is a UUIDv7 of the sender's own. Sending an entry
 * again is safe: the same id with the same content is kept once and answered the same, with other content it is refused
 * as `reading-clash`. A value outside its plausible range is refused as `odd-reading` until somebody looked again and it
 * comes with `confirmed: true`; `confirmed` is no part of the content, and what is outside stays marked whatever comes
 * with it.
 *
 * The answer is `{ "readings": [ … ] }` in the same order. A kept one has `ok: true`, its `id`, `hash` (SHA-256 of the
 * entry's canonical text, reading-content.input.ts), `isAgain`, `outOfRange` and `needs`. A refused one has
 * `ok: false`, its `id` as far as it could be read, `refusal`, `words`, and `problems` by field. An entry is in the
 * book when its id and hash came back, and not before.
 *
 * Status: 200 when any was kept, or they were refused differently; when all were refused alike 401 (not signed
 * in), 403 (role), 503 (the book is away: send again after `Retry-After`) or 422. 403 for another site, 415 and 400 for what is not JSON,
 * 413 for more than 256 KiB, 422 for another shape; these have `{ "refusal": … }`.
 */
export async function POST(request: Request): Promise<Response> {
  if (!isSameOrigin(request)) return refuse(403, 'other-site')
  const read = await readJson(request, mostBytes)
  if (!read.ok) return refuse(read.status, frameRefusals[read.status])
  const frame = sendReadingsInput.safeParse(read.value)
  if (!frame.success) return refuse(422, 'wrong-shape')
  const caller = await currentCaller()
  const language = await currentLanguage()
  const sent: SentReading[] = []
  for (const entry of frame.data.readings) {
    const result = await ('supersedesId' in entry ? correctReading : logReading).call(caller, entry)
    if (result.ok) {
      const { readingId, ...value } = result.value
      sent.push({ ok: true, id: readingId, ...value })
      continue
    }
    const { sentence, problems } = wordsOfRefusal(result.refusal, language)
    sent.push({ ok: false, id: typeof entry.id === 'string' ? entry.id : null, refusal: result.refusal.code, words: sentence, problems })
  }
  const status = statusOf(sent)
  return Response.json({ readings: sent }, { status, headers: { 'Cache-Control': 'no-store', ...(status === 503 ? { 'Retry-After': '5' } : {}) } })
}

const frameRefusals = { 400: 'not-json', 413: 'too-large', 415: 'not-json' } as const

function refuse(status: number, refusal: string): Response {
  return Response.json({ refusal }, { status, headers: { 'Cache-Control': 'no-store' } })
}

const statuses: Partial<Record<RefusalCode, number>> = { 'not-signed-in': 401, 'not-allowed': 403, away: 503, 'outcome-unknown': 503 }

function statusOf(sent: readonly SentReading[]): number {
  const found = new Set(sent.map((each) => (each.ok ? 200 : (statuses[each.refusal] ?? 422))))
  return found.size === 1 ? [...found][0]! : 200
}
