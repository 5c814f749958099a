import type { CountOfFormat1 } from './count-of-format-1.input'

/** What was entered of a count, whatever the format of its text. */
export type CountContent = Omit<CountOfFormat1, 'format'>

/** A count in its one text: canonical JSON (RFC 8785), as `textOfReading`. */
export function textOfCount(content: CountContent): string {
  const { batch, clockAheadS, given, good, made, sampled, sold, takenAt, wasted } = content
  // The keys stand in alphabetical order.
  return JSON.stringify({
    batch,
    clockAheadS,
    format: 1,
    given,
    good,
    made,
    sampled,
    sold,
    takenAt,
    wasted,
  } satisfies CountOfFormat1)
}
