import { stationRoute } from '@/app/station-route'
import { stationCookieHeader } from '@/lib/auth/station-cookie'
import { heldWith } from '@/lib/auth/station-secret'
import { logOn } from '@/lib/kitchen/stations/log-on'

export const POST = stationRoute(logOn, {
  dress: ({ secret, ...shown }, held) => ({
    shown,
    ...(secret === null ? {} : { headers: { 'Set-Cookie': stationCookieHeader(heldWith(secret, held)) } }),
  }),
})
