import { z } from 'zod'
import { instant, line } from '../text.input'
import { longestAgoS, stepKinds, stepTempC } from './step-kinds.input'

const tempC = z.number().min(stepTempC.least).max(stepTempC.most)
/** One step of one dough, as a device or a script sends it. */
export const logStepInput = z.strictObject({
  /** Made by the device when the step is kept; the same id is never used for another one. */
  id: z.uuidv7(),
  batchId: z.uuid(),
  step: z.enum(stepKinds),
  /** False for a correction only: what was entered had not been done. */
  isDone: z.boolean(),
  /** How long before `takenAt` it was. */
  agoS: z.int().min(0).max(longestAgoS),
  /** By how much the book's clock is ahead of the device's, as far as the device knows. */
  clockAheadS: z.int().min(-2_000_000_000).max(2_000_000_000).nullish(),
  /** Of the moulder. */
  setting: line(60).nullish(),
  chamberTempC: tempC.nullish(),
  /** Deck and place in the oven, its temperature as set and as read, and what else is in it. */
  place: line(60).nullish(),
  setTempC: tempC.nullish(),
  readTempC: tempC.nullish(),
  steam: z.boolean().nullish(),
  beside: line(200).nullish(),
  /** By the device's own clock. */
  takenAt: instant,
  /** The step that was wrong, and why. */
  supersedesId: z.uuid().nullish(),
  reason: line(300).nullish(),
})
export type StepEntry = z.output<typeof logStepInput>
