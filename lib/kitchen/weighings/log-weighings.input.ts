import { z } from 'zod'
import { line } from '../text.input'
import { weighedLots, weighingHow, weighingPart } from './log-weighing.input'

/** Several lines of one dough, from one form. */
export const logWeighingsInput = z.strictObject({
  batchId: z.uuid(),
  lines: z
    .array(
      z.strictObject({
        stageId: z.uuid(),
        ingredientId: z.uuid(),
        part: weighingPart,
        /** What stood there when the form was shown; null where nothing did. */
        seenId: z.uuid().nullable(),
        /** Null where nothing is said of the line. */
        how: weighingHow.nullable(),
        mass: line(40).optional(),
        lots: weighedLots.optional(),
      }),
    )
    .min(1)
    .max(500),
  /** Of every mass. */
  unit: line(20),
  /** Why what stood there was wrong. */
  reason: line(300).optional(),
  /** Somebody looked again at a mass far from what any dough of the trial has. */
  confirmed: z.boolean(),
})
