import 'server-only'
import { stationCookieHeader } from '@/lib/auth/station-cookie'
import { heldWith } from '@/lib/auth/station-secret'

/** What the tablet's page is shown of somebody who came on to it: a new secret of the tablet's own goes into its cookie alone. */
export function dressCameOn<Shown extends { secret: string | null }>({ secret, ...shown }: Shown, held: string) {
  return {
    shown,
    ...(secret === null ? {} : { headers: { 'Set-Cookie': stationCookieHeader(heldWith(secret, held)) } }),
  }
}
