import { z } from 'zod'
import { instant, line } from '../text.input'

const said = {
  equipmentId: z.uuid(),
  /** Of the test weight on a scale, in the same unit; left out for the one that the book knows of it, and for others. */
  mass: line(40).nullish(),
  /** The volume of the block in a volume gauge, in the same unit; left out for the one that the book knows of it, and for others. */
  block: line(40).nullish(),
  /** What it showed, as it was typed: '999.5'. */
  shown: line(40),
  unit: line(20),
}

/** One check of a scale, a thermometer or a volume gauge, as a device or a script sends it. */
export const logCheckInput = z.strictObject({
  /** Made by the device when the check is kept; the same id is never used for another one. */
  id: z.uuidv7(),
  ...said,
  /** By how much the book's clock is ahead of the device's, as far as the device knows. */
  clockAheadS: z.int().min(-2_000_000_000).max(2_000_000_000).nullish(),
  /** By the device's own clock. */
  takenAt: instant,
})
export type CheckEntry = z.output<typeof logCheckInput>

/** One check, from a form at the desk. */
export const keepCheckInput = z.strictObject(said)
