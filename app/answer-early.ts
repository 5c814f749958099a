import 'server-only'

/**
 * Which status a request gets before any page or action sees it, or null when it goes on. What writes comes from a
 * page of ours and says so: its Origin is this host, and no browser calls it of another site. The framework's own
 * check stays behind this one; it answers 500.
 */
export function answerEarly(method: string, headers: Headers): 403 | null {
  if (method === 'GET' || method === 'HEAD' || method === 'OPTIONS') return null
  const site = headers.get('sec-fetch-site')
  if (site !== null && site !== 'same-origin') return 403
  const origin = headers.get('origin')
  // As the framework reads it: behind a proxy the host that the browser asked for.
  const host = headers.get('x-forwarded-host')?.split(',')[0]?.trim() ?? headers.get('host')
  return origin !== null && URL.canParse(origin) && new URL(origin).host === host ? null : 403
}
