import NextAuth from 'next-auth'
import { nextAuthOptions } from '@/lib/auth/sign-in-cookie'
import { signIn } from '@/lib/kitchen/people/sign-in'

async function handle(request: Request, context: unknown): Promise<Response> {
  const options = nextAuthOptions({
    async openSession(typed, from) {
      const answer = await signIn.call({ sessionSecret: null, ...from }, typed)
      return answer.ok ? (answer.value?.sessionSecret ?? null) : null
    },
  })
  const answer = NextAuth(options) as (request: Request, context: unknown) => Promise<Response>
  return answer(request, context)
}

export { handle as GET, handle as POST }
