import 'server-only'
import { keepRead } from '../keep-read'
import { openDocument, type Unread } from '../open-document'
import { contentOfFormat1 } from './content-of-format-1'
import type { VersionContent } from './text-of-version-content'

export type VersionContentRead = { outcome: 'read'; format: number; content: VersionContent } | Unread

/**
 * Reads the content of a version that was signed. Its hash is not asked for here: a version whose text does not fit
 * its seal is shown with that said, because it is what is being baked.
 */
export const readVersionContent = keepRead((text): VersionContentRead => {
  const opened = openDocument(text)
  if (!opened) return { outcome: 'damaged' }
  const { format, value } = opened
  if (format !== 1) return { outcome: 'unknown-format', format }
  const read = contentOfFormat1.safeParse(value).data
  if (!read) return { outcome: 'damaged' }
  const { format: _, ...content } = read
  return { outcome: 'read', format, content }
})
