import 'server-only'

/**
 * What tells browsers to come by https alone, or null. Only behind a proxy and at an https address: it holds for every
 * port of a host, so on a machine of one's own it would lock other programs out. Browsers heed it only where the
 * certificate is one that they trust (RFC 6797, section 8.1).
 */
export function transportHeader(
  env: { EVENDOUGH_BEHIND_PROXY?: string; NEXTAUTH_URL?: string } = process.env,
): string | null {
  if (env.EVENDOUGH_BEHIND_PROXY !== '1' || !env.NEXTAUTH_URL || !URL.canParse(env.NEXTAUTH_URL)) return null
  const { protocol, hostname } = new URL(env.NEXTAUTH_URL)
  const isThisMachine =
    hostname === 'localhost' || hostname.endsWith('.localhost') || hostname === '127.0.0.1' || hostname === '[::1]'
  return protocol === 'https:' && !isThisMachine ? 'max-age=31536000' : null
}
