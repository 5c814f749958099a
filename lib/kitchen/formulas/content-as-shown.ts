import 'server-only'
import { hashOfText } from '../../documents/hash-of-text'
import type { ContentOfFormat1 } from '../../documents/version-content/content-of-format-1'
import { readVersionContent } from '../../documents/version-content/read-version-content'
import { textOfVersionContent, type VersionContent } from '../../documents/version-content/text-of-version-content'
import { refusalOfUnread } from '../refusal-of-unread'
import { contentOfVersion } from './content-of-version'
import type { VersionRead } from './read-version'

export type ShownContent = {
  content: VersionContent
  text: string
  hash: string
  /** Whether the kept text still has the hash that was signed; true for a draft, which has none. */
  isWhole: boolean
}

/**
 * A signed version as it was signed, a draft as its rows and ingredients are now.
 * @throws Refusal 'unknown-format' | 'damaged-text' for a signed one that cannot be read
 */
export function contentAsShown(version: VersionRead): ShownContent {
  if (version.signedAt === null || version.contentText === null) return contentAsItIsNow(version)
  const hash = hashOfText(version.contentText)
  const read = readVersionContent(version.contentText)
  if (read.outcome !== 'read') throw refusalOfUnread(read)
  return { content: read.content, text: version.contentText, hash, isWhole: hash === version.contentHash }
}

/** A version out of its rows and what its ingredients are now, signed or not; `document` is for the record. */
export function contentAsItIsNow(version: VersionRead): ShownContent & { document: ContentOfFormat1 } {
  const content = contentOfVersion(version)
  return { content, ...textOfVersionContent(content), isWhole: true }
}
