import 'server-only'
import { hashOfText } from '../hash-of-text'
import { keepRead } from '../keep-read'
import { openDocument, type Unread } from '../open-document'
import { evidenceOfFormat1 } from './evidence-of-format-1'
import type { Evidence } from './text-of-evidence'

export type EvidenceRead = { outcome: 'read'; format: number; evidence: Evidence } | Unread

/** Reads evidence that was frozen. Of a damaged one nothing may be shown as frozen. */
export function readEvidence(text: string, hash: string): EvidenceRead {
  return hashOfText(text) === hash ? readText(text) : { outcome: 'damaged' }
}

const readText = keepRead((text): EvidenceRead => {
  const opened = openDocument(text)
  if (!opened) return { outcome: 'damaged' }
  const { format, value } = opened
  if (format !== 1) return { outcome: 'unknown-format', format }
  const read = evidenceOfFormat1.safeParse(value).data
  if (!read) return { outcome: 'damaged' }
  const { format: _, ...evidence } = read
  return { outcome: 'read', format, evidence }
})
