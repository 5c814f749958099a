import 'server-only'
import { cookies, headers } from 'next/headers'
import { addressOf, readSessionSecret, sessionCookie } from '@/lib/auth/sign-in-cookie'
import type { Caller } from '@/lib/kitchen/caller'

/** Who calls with this request: what its cookie and headers say, to be looked up by the command or query. */
export async function currentCaller(password?: string): Promise<Caller> {
  const [jar, head] = await Promise.all([cookies(), headers()])
  return {
    sessionSecret: await readSessionSecret(jar.get(sessionCookie)?.value),
    address: addressOf(head.get('x-forwarded-for')),
    device: head.get('user-agent') ?? '',
    password,
  }
}
