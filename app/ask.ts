import 'server-only'
import { forbidden, notFound, redirect } from 'next/navigation'
import { cache } from 'react'
import type { RefusalCode } from '@/lib/kitchen/messages'
import type { OpenQuery } from '@/lib/kitchen/open-query'
import type { Query } from '@/lib/kitchen/query'
import type { Result } from '@/lib/kitchen/result'
import { awayDigest } from '@/lib/ui/away-digest'
import { currentCaller } from './caller'
import { currentReader } from './reader'

// The desk around a page and the page itself ask some of the same. React forgets it with the request.
const answerOnce = cache(async (query: Query, input: string) => query.call(await currentReader(), JSON.parse(input)))

/**
 * Asks a query for a page that has something to say where one of these refusals comes; any other ends as in `ask`.
 */
export async function askUnless<Value>(
  query: Query<Value>,
  input: unknown,
  codes: readonly RefusalCode[],
): Promise<Result<Value>> {
  const result = (await answerOnce(query, JSON.stringify(input))) as Result<Value>
  if (!result.ok && codes.includes(result.refusal.code)) return result
  return { ok: true, value: await ask(query, input) }
}

/**
 * Asks a query for a page, as whoever opens it, once a request. Who is not signed in goes to the sign-in page; what
 * is not there, or not theirs, is 'not found'.
 */
export async function ask<Value>(query: Query<Value>, input: unknown = {}): Promise<Value> {
  const result = (await answerOnce(query, JSON.stringify(input))) as Result<Value>
  if (result.ok) return result.value
  switch (result.refusal.code) {
    case 'not-signed-in':
      return redirect('/sign-in')
    case 'not-allowed':
      return forbidden()
    case 'away':
    case 'outcome-unknown':
      throw databaseIsAway(query.name)
    default:
      return notFound()
  }
}

/** Asks an open query, for a page behind a single-use link; null when the link is dead. */
export async function askOpenly<Value>(query: OpenQuery<Value>, input: unknown): Promise<{ value: Value } | null> {
  const result = await query.call(await currentCaller(), input)
  if (result.ok) return { value: result.value }
  // Nobody could look, so nobody may say that the link is dead.
  if (result.refusal.code === 'away') throw databaseIsAway(query.name)
  return null
}

/** Goes to the page's error boundary, which has words for it. */
function databaseIsAway(name: string): Error {
  return Object.assign(new Error(`${name}: the database is away`), { digest: awayDigest })
}
