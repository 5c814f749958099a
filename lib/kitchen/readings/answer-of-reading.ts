import 'server-only'
import { isOutside, type JudgedReading } from './range-of-reading'
import { settleRepeats } from './settle-repeats.input'

export type ReadingAnswer = {
  readingId: string
  /** Hash of what was kept: a device forgets its own copy only when it is the same as its own. */
  hash: string
  /** The same content had come before under this id. */
  isAgain: boolean
  /** Outside its plausible range, and kept because somebody confirmed it. */
  outOfRange: boolean
  /** What this place still asks for: another repeat, or a third reading because two disagree. */
  needs: 'repeat' | 'third' | null
}

type Measure = { repeats: number; repeatLimit: number | null; plausibleLeast: number; plausibleMost: number }

/** What a device is told of a reading that is in the book. */
export function answerOfReading(
  reading: JudgedReading & { id: string; contentHash: string },
  isAgain: boolean,
  measure: Measure,
  atPlace: readonly { value: number }[],
): ReadingAnswer {
  const values = atPlace.map(({ value }) => value)
  return {
    readingId: reading.id,
    hash: reading.contentHash,
    isAgain,
    outOfRange: isOutside(reading, measure),
    needs:
      values.length === 0
        ? null
        : settleRepeats({ values, repeats: measure.repeats, repeatLimit: measure.repeatLimit }).needs,
  }
}
