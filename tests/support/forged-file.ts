import { createHash } from 'node:crypto'
import { canonicalText } from '@/lib/documents/canonical-text'
import { evidenceOfFormat2 } from '@/lib/documents/evidence/evidence-of-format-2'
import { fileOfFormat1 } from '@/lib/documents/evidence-file/file-of-format-1'
import { openDocument } from '@/lib/documents/open-document'

export const sha256 = (text: string) => createHash('sha256').update(text, 'utf8').digest('hex')

/** A part of a file of evidence. */
export function partOf(text: string, kind: string): unknown {
  const part = fileOfFormat1.parse(JSON.parse(text)).parts.find((each) => each.kind === kind)
  return JSON.parse(part?.text ?? '')
}

/** A file of evidence as somebody would forge it: a part changed, and every hash that names it, up to the list of parts. */
export function forgedFile(text: string, kind: string, change: (part: string) => string): string {
  const file = fileOfFormat1.parse(JSON.parse(text))
  const manifest = evidenceOfFormat2.parse(JSON.parse(file.manifest.text))
  const part = file.parts.find((each) => each.kind === kind)
  const named = manifest.parts.find((each) => each.kind === kind)
  if (!part || !named) throw new Error(`the file has no ${kind}`)
  part.text = change(part.text ?? '')
  part.hash = named.hash = sha256(part.text)
  part.version = named.version = openDocument(part.text)?.format ?? 0
  const changed = canonicalText(manifest)
  if (changed === file.manifest.text) throw new Error('nothing was changed')
  return canonicalText({ ...file, manifest: { text: changed, hash: sha256(changed) } })
}

/** A file of evidence of which somebody took a part away, and its name from the list of parts. */
export function withoutPart(text: string, kind: string): string {
  const file = fileOfFormat1.parse(JSON.parse(text))
  const manifest = evidenceOfFormat2.parse(JSON.parse(file.manifest.text))
  const changed = canonicalText({ ...manifest, parts: manifest.parts.filter((part) => part.kind !== kind) })
  return canonicalText({
    ...file,
    parts: file.parts.filter((part) => part.kind !== kind),
    manifest: { text: changed, hash: sha256(changed) },
  })
}
