import type { NoteOfFormat1 } from './note-of-format-1.input'

/** What was written, whatever the format of its text. */
export type NoteContent = Omit<NoteOfFormat1, 'format'>

/** A note in its one text: canonical JSON (RFC 8785), as `textOfReading`. */
export function textOfNote({ batch, forNext, takenAt, text, trial }: NoteContent): string {
  // The keys stand in alphabetical order.
  return JSON.stringify({ batch, forNext, format: 1, takenAt, text, trial } satisfies NoteOfFormat1)
}
