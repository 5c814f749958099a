import 'server-only'

/**
 * Whether a writing request comes from a page of ours. Route handlers have no such check of their own; server
 * actions have. A browser says so in Sec-Fetch-Site; one that does not must send an Origin that is ours.
 */
export function isSameOrigin(request: Request): boolean {
  const site = request.headers.get('sec-fetch-site')
  if (site) return site === 'same-origin'
  const origin = request.headers.get('origin')
  return origin !== null && URL.canParse(origin) && new URL(origin).host === request.headers.get('host')
}
