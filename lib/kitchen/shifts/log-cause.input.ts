import { z } from 'zod'
import { instant, line } from '../text.input'

/** What happened to a dough, as a device or a script sends it. */
export const logCauseInput = z.strictObject({
  /** Made by the device when it is noted; the same id is never used for another one. */
  id: z.uuidv7(),
  batchId: z.uuid(),
  what: line(300),
  /** When it was noticed, by the device's own clock. */
  takenAt: instant,
})
export type CauseEntry = z.output<typeof logCauseInput>
