import 'server-only'
import { cookies, headers } from 'next/headers'
import { z } from 'zod'
import { addressOf } from '@/lib/auth/address-of'
import { onceHeader, shiftHeader, stationCookie } from '@/lib/auth/station-cookie'
import type { Caller } from '@/lib/kitchen/caller'
import { readLanguage } from '@/lib/words/words'

/** The tablet that sends this request, with whoever is on it; null where it is not one that was enrolled. */
export async function currentStation(): Promise<Extract<Caller, { kind: 'station' }> | null> {
  const [jar, head] = await Promise.all([cookies(), headers()])
  const stationSecret = jar.get(stationCookie)?.value
  return stationSecret
    ? {
        kind: 'station',
        stationSecret,
        shiftToken: head.get(shiftHeader),
        formId: z.uuid().safeParse(head.get(onceHeader)).data,
        address: addressOf((name) => head.get(name)),
        device: head.get('user-agent') ?? '',
        browserLanguage: readLanguage(head.get('accept-language')),
      }
    : null
}
