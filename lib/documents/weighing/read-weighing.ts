import 'server-only'
import type { z } from 'zod'
import { hashOfText } from '../hash-of-text'
import { openDocument, type Unread } from '../open-document'
import type { WeighingContent } from './text-of-weighing.input'
import { weighingOfFormat1 } from './weighing-of-format-1.input'
import { weighingOfFormat2 } from './weighing-of-format-2.input'

export type WeighingRead = { outcome: 'read'; format: number; weighing: WeighingContent } | Unread

const formats: Readonly<Record<number, z.ZodType<WeighingContent & { format: number }>>> = {
  1: weighingOfFormat1,
  2: weighingOfFormat2,
}

/** Reads the text of what was entered of a line. */
export function readWeighing(text: string, hash: string): WeighingRead {
  const opened = hashOfText(text) === hash ? openDocument(text) : null
  if (!opened) return { outcome: 'damaged' }
  const { format, value } = opened
  const schema = formats[format]
  if (!schema) return { outcome: 'unknown-format', format }
  const read = schema.safeParse(value).data
  if (!read) return { outcome: 'damaged' }
  const { format: _, ...weighing } = read
  return { outcome: 'read', format, weighing }
}
