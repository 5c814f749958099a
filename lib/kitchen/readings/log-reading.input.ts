import { z } from 'zod'
import { instant, line } from '../text.input'

/** Name, place and number of one reading, as a device or a script sends it. */
export const logReadingInput = z.strictObject({
  /** Made by the device when the reading is taken; the same id is never used for another one. */
  id: z.uuidv7(),
  batchId: z.uuid(),
  measureId: z.uuid(),
  /** From 1; left out for a measure of the whole batch. */
  piece: z.int().min(1).max(10_000).nullish(),
  /** Which level of the trial's factor within batches, where it has one. */
  factorLevel: line(80).nullish(),
  /** From 1: the first reading of this measure on this piece, the second, the third. */
  repeat: z.int().min(1).max(20),
  /** As it was typed: '412.5'. */
  value: line(40),
  unit: line(20),
  /** By the device's own clock. */
  takenAt: instant,
  /** Somebody looked again at a value outside its plausible range, and it is right. No part of the content. */
  confirmed: z.boolean().optional(),
})
