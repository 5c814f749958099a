import 'server-only'
import { canonicalText } from '../../documents/canonical-text'
import { hashOfText } from '../../documents/hash-of-text'

/** One hash for the amendments that were accepted, in their order: whoever signs for them has seen just these. */
export function amendedHash(accepted: readonly { id: string; hash: string }[]): string {
  return hashOfText(canonicalText(accepted.map(({ id, hash }) => [id, hash])))
}
