import 'server-only'
import { cookies } from 'next/headers'
import { makeSessionToken, sessionCookie } from '@/lib/auth/sign-in-cookie'
import { sessionLongestMs } from '@/lib/auth/session-life'

/** Gives the browser a session that a single-use link opened, in the cookie that signing in would give. */
export async function keepSession(sessionSecret: string): Promise<void> {
  const jar = await cookies()
  const value = await makeSessionToken(sessionSecret)
  jar.set(sessionCookie, value, {
    httpOnly: true,
    secure: true,
    sameSite: 'lax',
    path: '/',
    maxAge: sessionLongestMs / 1000,
  })
}
