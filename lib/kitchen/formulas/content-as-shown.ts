import 'server-only'
import { contentOfVersion, hashOfContentText, readContentText, textOfContent, type VersionContent } from './content-of-version'
import type { VersionRead } from './read-version'

export type ShownContent = {
  content: VersionContent
  text: string
  hash: string
  /** Whether the kept text still has the hash that was signed; true for a draft, which has none. */
  isWhole: boolean
}

/** A signed version as it was signed, a draft as its rows and ingredients are now. */
export function contentAsShown(version: VersionRead): ShownContent {
  if (version.signedAt === null || version.contentText === null) return contentAsItIsNow(version)
  const hash = hashOfContentText(version.contentText)
  return { content: readContentText(version.contentText), text: version.contentText, hash, isWhole: hash === version.contentHash }
}

/** A version out of its rows and what its ingredients are now, signed or not. */
export function contentAsItIsNow(version: VersionRead): ShownContent {
  const content = contentOfVersion(version)
  const text = textOfContent(content)
  return { content, text, hash: hashOfContentText(text), isWhole: true }
}
