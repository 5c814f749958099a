import 'server-only'
import { canonicalText } from '../canonical-text'
import { hashOfText } from '../hash-of-text'
import { contentOfFormat1, type ContentOfFormat1 } from './content-of-format-1'

/** What a version says: exactly this is shown, hashed, signed and kept, whatever the format of its text. */
export type VersionContent = Omit<ContentOfFormat1, 'format'>

/**
 * A version's content in its one text, and the hash of that: what is signed.
 * @returns beside them what the text says, with its format, for where it stands in another document
 * @throws ZodError for anything that could not be read back
 */
export function textOfVersionContent(content: VersionContent): {
  document: ContentOfFormat1
  text: string
  hash: string
} {
  const document = contentOfFormat1.parse({ format: 1, ...content })
  const text = canonicalText(document)
  return { document, text, hash: hashOfText(text) }
}
