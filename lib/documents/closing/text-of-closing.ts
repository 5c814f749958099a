import 'server-only'
import { canonicalText } from '../canonical-text'
import { hashOfText } from '../hash-of-text'
import { closingOfFormat2, type ClosingOfFormat2 } from './closing-of-format-2'

/**
 * A closing in its one text, and the hash of that.
 * @throws ZodError for anything that could not be read back
 */
export function textOfClosing(closing: Omit<ClosingOfFormat2, 'format'>): { text: string; hash: string } {
  const text = canonicalText(closingOfFormat2.parse({ format: 2, ...closing }))
  return { text, hash: hashOfText(text) }
}
