import 'server-only'
import canonicalize from 'canonicalize'

/** A small plain value, as it can stand in a document. */
export type Json = string | number | boolean | null | Json[] | { [key: string]: Json }

/**
 * JSON in the one form of RFC 8785, so that the same content has the same hash everywhere.
 * @param value of which a field that is `undefined` is left out
 * @throws Error for what is no JSON, a number that is not finite among it
 */
export function canonicalText(value: unknown): string {
  const text = canonicalize(value)
  if (text === undefined) throw new Error('not JSON')
  return text
}
