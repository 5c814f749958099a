import type { z } from 'zod'
import { textOfReading } from '../../documents/reading/text-of-reading.input'
import type { correctReadingInput } from './correct-reading.input'
import type { logReadingInput } from './log-reading.input'

export type ReadingEntry = z.output<typeof logReadingInput> | z.output<typeof correctReadingInput>

/**
 * What a reading's hash is of: everything that was entered but its id and the confirmation of an odd value, which may
 * come with a second sending. Device and book both write it, so the hash that the book answers with tells the device
 * that exactly this was kept.
 */
export function readingContentText(entry: ReadingEntry): string {
  const correction = 'supersedesId' in entry
  return textOfReading({
    batch: correction ? null : entry.batchId,
    factorLevel: correction ? null : (entry.factorLevel ?? null),
    measure: correction ? null : entry.measureId,
    piece: entry.piece ?? null,
    reason: correction ? entry.reason : null,
    repeat: entry.repeat,
    supersedes: correction ? entry.supersedesId : null,
    takenAt: correction ? null : entry.takenAt,
    unit: entry.unit,
    value: entry.value,
  })
}
