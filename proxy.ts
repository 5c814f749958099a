import { NextResponse, type NextRequest } from 'next/server'
import { answerAway } from './app/answer-away'
import { answerEarly } from './app/answer-early'
import { transportHeader } from './lib/auth/transport-header'
import { databaseAnswers } from './lib/db/database-answers'

/** What needs no database, and browsers ask for beside a page. */
const pictures = new Set(['/icon.svg', '/favicon.ico'])

/**
 * Gives every page its content security policy, with a nonce that only this answer's own scripts carry.
 * It refuses writes that come from elsewhere, and everything while the database is away, since pages and actions can't
 * choose their status. It decides nothing about rights: those are asked in lib/kitchen.
 */
export async function proxy(request: NextRequest): Promise<Response> {
  const refused = answerEarly(request.method, request.headers)
  if (refused) return new NextResponse(null, { status: refused })
  const nonce = btoa(crypto.randomUUID())
  if (!pictures.has(request.nextUrl.pathname) && !(await databaseAnswers())) return answerAway(request, nonce)
  const policy = [
    "default-src 'self'",
    `script-src 'self' 'nonce-${nonce}' 'strict-dynamic'`,
    "style-src 'self'",
    "img-src 'self' blob: data:",
    "font-src 'self'",
    "connect-src 'self'",
    "object-src 'none'",
    "base-uri 'none'",
    "form-action 'self'",
    "frame-ancestors 'none'",
  ].join('; ')
  const headers = new Headers(request.headers)
  headers.set('Content-Security-Policy', policy)
  const response = NextResponse.next({ request: { headers } })
  response.headers.set('Content-Security-Policy', policy)
  response.headers.set('Cache-Control', 'no-store')
  const transport = transportHeader()
  if (transport) response.headers.set('Strict-Transport-Security', transport)
  return response
}

// A tablet's document, files and worker have a policy of their own, and are there without the database.
export const config = { matcher: ['/((?!_next/static|_next/image|api/|station$|station/|station-worker\\.js$).*)'] }
