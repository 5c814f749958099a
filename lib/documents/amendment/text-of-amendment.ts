import 'server-only'
import { canonicalText } from '../canonical-text'
import { hashOfText } from '../hash-of-text'
import { amendmentOfFormat1, type AmendmentOfFormat1 } from './amendment-of-format-1'

/** A proposed amendment, whatever the format of its text. */
export type AmendmentContent = Omit<AmendmentOfFormat1, 'format'>

/**
 * An amendment in its one text, and the hash of that.
 * @throws ZodError for anything that could not be read back
 */
export function textOfAmendment(amendment: AmendmentContent): { text: string; hash: string } {
  const text = canonicalText(amendmentOfFormat1.parse({ format: 1, ...amendment }))
  return { text, hash: hashOfText(text) }
}
