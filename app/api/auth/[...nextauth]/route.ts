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
  const options = nextAuthOptions({
    async openSession(typed, from) {
      const answer = await signIn.call({ sessionSecret: null, ...from }, typed)
      return answer.ok ? (answer.value?.sessionSecret ?? null) : null
    },
  })
  const answer = NextAuth(options) as (request: Request, context: unknown) => Promise<Response>
  return answer(new NextRequest(request.url, { method: request.method, headers: request.headers, body }), context)
}

export { handle as GET, handle as POST }
