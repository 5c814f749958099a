import type { CauseOfFormat1 } from './cause-of-format-1.input'

/** What was noted, whatever the format of its text. */
export type CauseContent = Omit<CauseOfFormat1, 'format'>

/** What happened to a dough in its one text: canonical JSON (RFC 8785), as `textOfReading`. */
export function textOfCause({ batch, takenAt, what }: CauseContent): string {
  // The keys stand in alphabetical order.
  return JSON.stringify({ batch, format: 1, takenAt, what } satisfies CauseOfFormat1)
}
