import type { CheckOfFormat1 } from './check-of-format-1.input'

/** What was entered of a check, whatever the format of its text. */
export type CheckContent = Omit<CheckOfFormat1, 'format'>

/** A check in its one text: canonical JSON (RFC 8785), as `textOfReading`. */
export function textOfCheck({ clockAheadS, equipment, mass, shown, takenAt, unit }: CheckContent): string {
  // The keys stand in alphabetical order.
  return JSON.stringify({ clockAheadS, equipment, format: 1, mass, shown, takenAt, unit } satisfies CheckOfFormat1)
}
