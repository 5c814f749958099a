import NextAuth from 'next-auth'
import { NextRequest } from 'next/server'
import { readBytes } from '@/app/read-bytes'
import { nextAuthOptions } from '@/lib/auth/sign-in-cookie'
import { signIn } from '@/lib/kitchen/people/sign-in'

/** An address and a password fit in many times over. */
const mostBytes = 16 * 1024

async function handle(request: Request, context: unknown): Promise<Response> {
  // The library's own sign-out only drops the cookie; ours (/sign-out) ends the session's row.
  if (new URL(request.url).pathname.endsWith('/signout')) return new Response(null, { status: 404 })
  const body = request.body ? await readBytes(request, mostBytes) : undefined
  if (body === null) return new Response(null, { status: 413 })
  let isAway = false
  const options = nextAuthOptions({
    async openSession(typed, from) {
      const answer = await signIn.call({ kind: 'desk', sessionSecret: null, ...from }, typed)
      isAway = !answer.ok && (answer.refusal.code === 'away' || answer.refusal.code === 'outcome-unknown')
      return answer.ok ? (answer.value?.sessionSecret ?? null) : null
    },
  })
  const answer = NextAuth(options) as (request: Request, context: unknown) => Promise<Response>
  const answered = await answer(
    new NextRequest(request.url, { method: request.method, headers: request.headers, body }),
    context,
  )
  // The library knows only of a wrong password, which would be untrue.
  return isAway
    ? Response.json({ refusal: 'away' }, { status: 503, headers: { 'Cache-Control': 'no-store', 'Retry-After': '5' } })
    : answered
}

export { handle as GET, handle as POST }
