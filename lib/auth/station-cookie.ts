import 'server-only'

export const stationCookie = '__Host-evendough.station'
/** Carries the token of whoever is on the tablet with a request; it lies on the tablet alone. */
export const shiftHeader = 'evendough-shift'
/** Names what a tablet asks for, so that asking again does nothing more. */
export const onceHeader = 'evendough-once'

/** As long as browsers keep a cookie at all; the station itself ends when it is withdrawn. */
const longestS = 400 * 24 * 60 * 60

/** The header that gives a tablet its secret: for this address alone, never for a script, never from another site. */
export function stationCookieHeader(secret: string): string {
  return `${stationCookie}=${secret}; Max-Age=${longestS}; Path=/; Secure; HttpOnly; SameSite=Strict`
}
