import 'server-only'
import { awayDigest } from '@/lib/ui/away-digest'
import { readLanguage, wordsIn } from '@/lib/words/words'
import { awayPage } from './away-page'

/** Seconds after which to ask again; a page does so by itself. */
const againInS = '5'

/**
 * What any request is answered while the database is away: 503, and words in what it can read. A page gets a page; a
 * form's action a word that the form knows, so that what was typed stays; anything else a sentence.
 */
export function answerAway(request: { method: string; headers: Headers }, nonce: string): Response {
  const headers: Record<string, string> = { 'Cache-Control': 'no-store', 'Retry-After': againInS }
  const language = readLanguage(request.headers.get('accept-language'))
  const asks = request.method === 'GET' || request.method === 'HEAD'
  // The framework's router fetches parts of pages, and asks for the whole page when it is told no.
  if (asks && request.headers.get('sec-fetch-dest') !== 'empty') {
    return new Response(awayPage(language, nonce), {
      status: 503,
      headers: {
        ...headers,
        'Content-Type': 'text/html; charset=utf-8',
        'Content-Security-Policy': `default-src 'none'; style-src 'nonce-${nonce}'; img-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'`,
        // Nobody types on this page, and it comes as itself when the database is back.
        Refresh: againInS,
      },
    })
  }
  // Without a charset: the framework's client hands on the text of exactly this type.
  if (request.headers.has('next-action'))
    return new Response(awayDigest, { status: 503, headers: { ...headers, 'Content-Type': 'text/plain' } })
  return new Response(wordsIn(language).refusals.away, {
    status: 503,
    headers: { ...headers, 'Content-Type': 'text/plain; charset=utf-8' },
  })
}
