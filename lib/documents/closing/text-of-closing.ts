import 'server-only'
import { canonicalText } from '../canonical-text'
import { hashOfText } from '../hash-of-text'
import { closingOfFormat1, type ClosingOfFormat1 } from './closing-of-format-1'

/** What a trial's readings were when they were closed, whatever the format of its text. */
export type Closing = Omit<ClosingOfFormat1, 'format'>

/**
 * A closing in its one text, and the hash of that.
 * @throws ZodError for anything that could not be read back
 */
export function textOfClosing(closing: Closing): { text: string; hash: string } {
  const text = canonicalText(closingOfFormat1.parse({ format: 1, ...closing }))
  return { text, hash: hashOfText(text) }
}
