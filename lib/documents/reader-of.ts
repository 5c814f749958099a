import 'server-only'
import type { z } from 'zod'
import { hashOfText } from './hash-of-text'
import { keepRead } from './keep-read'
import { openDocument, type Unread } from './open-document'

export type DocumentRead<Value> = { outcome: 'read'; format: number; value: Value } | Unread

/** Reads a kept text of the one format that its kind has, if it is the text that was hashed. */
export function readerOf<Schema extends z.ZodType>(
  schema: Schema,
  format: number,
): (text: string, hash: string) => DocumentRead<z.output<Schema>> {
  return readerOfFormats<z.output<Schema>>({ [format]: schema as z.ZodType<z.output<Schema>> })
}

/** Reads a kept text of a kind that has several formats which say the same, if it is the text that was hashed. */
export function readerOfFormats<Value>(
  formats: Readonly<Record<number, z.ZodType<Value>>>,
): (text: string, hash: string) => DocumentRead<Value> {
  const readText = keepRead((text): DocumentRead<Value> => {
    const opened = openDocument(text)
    if (!opened) return { outcome: 'damaged' }
    const { format } = opened
    const schema = formats[format]
    if (!schema) return { outcome: 'unknown-format', format }
    const read = schema.safeParse(opened.value)
    return read.success ? { outcome: 'read', format, value: read.data } : { outcome: 'damaged' }
  })
  return (text, hash) => (hashOfText(text) === hash ? readText(text) : { outcome: 'damaged' })
}
