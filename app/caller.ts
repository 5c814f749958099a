import 'server-only'
import { cookies, headers } from 'next/headers'
import { addressOf } from '@/lib/auth/address-of'
import { readSessionSecret, sessionCookie } from '@/lib/auth/sign-in-cookie'
import type { DeskCaller } from '@/lib/kitchen/caller'
import { readLanguage } from '@/lib/words/words'

/** Who calls with this request: what its cookie and headers say, to be looked up by the command or query. */
export async function currentCaller(password?: string): Promise<DeskCaller> {
  const [jar, head] = await Promise.all([cookies(), headers()])
  return {
    kind: 'desk',
    sessionSecret: await readSessionSecret(jar.get(sessionCookie)?.value),
    address: addressOf((name) => head.get(name)),
    device: head.get('user-agent') ?? '',
    browserLanguage: readLanguage(head.get('accept-language')),
    password,
  }
}
