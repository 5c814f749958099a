import { z } from 'zod'
import { line } from '../text.input'

/** A reading that takes another one's place, and why. */
export const correctReadingInput = z.strictObject({
  id: z.uuidv7(),
  /** The reading that was wrong. */
  supersedesId: z.uuid(),
  /** As it should have been: the piece and the repeat may have been wrong as well as the number. */
  piece: z.int().min(1).max(10_000).nullish(),
  repeat: z.int().min(1).max(20),
  value: line(40),
  unit: line(20),
  reason: line(300),
  /** Somebody looked again at a value outside its plausible range, and it is right. No part of the content. */
  confirmed: z.boolean().optional(),
})
