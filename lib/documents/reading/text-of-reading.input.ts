import type { ReadingOfFormat1 } from './reading-of-format-1.input'

/** What was entered of one reading, whatever the format of its text. */
export type ReadingContent = Omit<ReadingOfFormat1, 'format'>

/**
 * What was entered of a reading in its one text: canonical JSON (RFC 8785: no blanks, keys in order, and nothing in it
 * but texts, small whole numbers and null). Device and book both write it, so that the device needs no library for it.
 */
export function textOfReading({
  batch,
  factorLevel,
  measure,
  piece,
  reason,
  repeat,
  supersedes,
  takenAt,
  unit,
  value,
}: ReadingContent): string {
  // The keys stand in alphabetical order.
  return JSON.stringify({
    batch,
    factorLevel,
    format: 1,
    measure,
    piece,
    reason,
    repeat,
    supersedes,
    takenAt,
    unit,
    value,
  })
}
