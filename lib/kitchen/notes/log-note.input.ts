import { z } from 'zod'
import { instant, visibleNote } from '../text.input'

/** What somebody writes at any point, of a dough, of a trial, or of nothing: then it is of the shift. */
const said = {
  text: visibleNote(2000),
  /** Left for the next shift. */
  forNext: z.boolean(),
}

/** One note, as a device or a script sends it. */
export const logNoteInput = z.strictObject({
  /** Made by the device when the note is written; the same id is never used for another one. */
  id: z.uuidv7(),
  batchId: z.uuid().nullish(),
  /** Where it is of no single dough. */
  trialId: z.uuid().nullish(),
  ...said,
  /** By the device's own clock. */
  takenAt: instant,
})
export type NoteEntry = z.output<typeof logNoteInput>

/** One note, from a form at the desk. */
export const keepNoteInput = z.strictObject({ batchId: z.uuid().nullable(), ...said })
