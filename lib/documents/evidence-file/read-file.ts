import 'server-only'
import { openDocument, type Unread } from '../open-document'
import { fileOfFormat1, type FileOfFormat1 } from './file-of-format-1'

export type FileRead = { outcome: 'read'; format: number; file: Omit<FileOfFormat1, 'format'> } | Unread

/** Reads a file of evidence; what it says of its texts is still to be checked. */
export function readFile(text: string): FileRead {
  const opened = openDocument(text)
  if (!opened) return { outcome: 'damaged' }
  if (opened.format !== 1) return { outcome: 'unknown-format', format: opened.format }
  const read = fileOfFormat1.safeParse(opened.value)
  if (!read.success) return { outcome: 'damaged' }
  const { format, ...file } = read.data
  return { outcome: 'read', format, file }
}
