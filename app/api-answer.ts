import 'server-only'
import type { RefusalCode } from '@/lib/kitchen/messages'
import type { Refused } from '@/lib/kitchen/result'
import { wordsOfRefusal } from '@/lib/kitchen/words-of-refusal'
import type { Language } from '@/lib/words/words'

/** An answer of the API: never kept by anything between. When the book is away it says when to ask again. */
export function reply(status: number, body: object, more: Record<string, string> = {}): Response {
  return Response.json(body, {
    status,
    headers: { 'Cache-Control': 'no-store', ...(status === 503 ? { 'Retry-After': '5' } : {}), ...more },
  })
}

/** A refusal of the API: its code, and the words for a person. */
export function replyRefused(refusal: Refused, language: Language): Response {
  const { sentence, problems } = wordsOfRefusal(refusal, language)
  const isAtFields = Object.keys(problems).length > 0
  return reply(statusOf(refusal.code), {
    refusal: refusal.code,
    words: sentence,
    ...(isAtFields ? { problems } : {}),
  })
}

const statuses: Partial<Record<RefusalCode, number>> = {
  'not-signed-in': 401,
  'not-allowed': 403,
  'too-many-pins': 429,
  'too-many-badges': 429,
  'too-many-codes': 429,
  'too-many-following': 429,
  'too-many-photos': 429,
  'photos-busy': 503,
  away: 503,
  'outcome-unknown': 503,
}

/** The HTTP status of a refusal. */
export function statusOf(refusal: RefusalCode): number {
  return statuses[refusal] ?? 422
}

/** The refusals of a frame that cannot be read, by the status of `readJson`. */
export const frameRefusals = { 400: 'not-json', 413: 'too-large', 415: 'not-json' } as const
