import 'server-only'
import { canonicalText } from '../canonical-text'
import { fileOfFormat1, type FileOfFormat1 } from './file-of-format-1'

/** Evidence as a file. @throws ZodError for anything that could not be read back */
export function textOfFile(file: Omit<FileOfFormat1, 'format'>): string {
  return canonicalText(fileOfFormat1.parse({ format: 1, ...file }))
}
