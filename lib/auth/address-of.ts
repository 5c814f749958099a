import 'server-only'
import { timingSafeEqual } from 'node:crypto'

/** Header by which the app knows the https front of its own start; the value is a secret of that start. */
export const frontHeader = 'x-evendough-front'

type Headers = (name: string) => string | null | undefined

/**
 * Address for the record: what our own front says of who asked, or else the last hop that a proxy saw which is trusted by
 * setting; 'direct' where nobody stands before the app who may say. Whoever comes past the front is not believed.
 */
export function addressOf(header: Headers, env: Readonly<Record<string, string | undefined>> = process.env): string {
  const isTrusted = env.EVENDOUGH_FRONT_SECRET
    ? isSame(header(frontHeader) ?? '', env.EVENDOUGH_FRONT_SECRET)
    : env.EVENDOUGH_BEHIND_PROXY === '1'
  if (!isTrusted) return 'direct'
  return (header('x-forwarded-for') ?? '').split(',').at(-1)?.trim().slice(0, 64) || 'unknown'
}

function isSame(given: string, wanted: string): boolean {
  const [a, b] = [Buffer.from(given), Buffer.from(wanted)]
  return a.length === b.length && timingSafeEqual(a, b)
}
