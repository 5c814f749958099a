import 'server-only'
import { canonicalText } from '../../documents/canonical-text'

/** As it is after it was written and read: without what is undefined. */
export function plain(value: unknown): unknown {
  return JSON.parse(canonicalText(value))
}
