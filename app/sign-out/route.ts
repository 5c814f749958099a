import { cookies } from 'next/headers'
import { currentCaller } from '@/app/caller'
import { isSameOrigin } from '@/app/same-origin'
import { sessionCookie } from '@/lib/auth/sign-in-cookie'
import { signOut } from '@/lib/kitchen/people/sign-out'

export async function POST(request: Request): Promise<Response> {
  if (!isSameOrigin(request)) return new Response(null, { status: 403 })
  await signOut.call(await currentCaller(), {})
  const jar = await cookies()
  jar.set(sessionCookie, '', { httpOnly: true, secure: true, sameSite: 'lax', path: '/', maxAge: 0 })
  // "cache" and not "storage": that would throw away what a tablet has not sent yet.
  return new Response(null, { status: 303, headers: { Location: '/sign-in', 'Clear-Site-Data': '"cache"' } })
}
