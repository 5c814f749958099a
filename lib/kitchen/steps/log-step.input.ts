import { z } from 'zod'
import { instant, line } from '../text.input'
import { stepKind } from './step-kinds.input'

/** No chamber is colder and no oven of a bakery hotter. Common practice, no source. */
export const stepTempC = { least: -40, most: 500 }
const tempC = z.number().min(stepTempC.least).max(stepTempC.most)
/** A step that is longer ago than this is of another day than this dough's. */
export const longestAgoS = 86_400

/** One step of one dough, as a device or a script sends it. */
export const logStepInput = z.strictObject({
  /** Made by the device when the step is kept; the same id is never used for another one. */
  id: z.uuidv7(),
  batchId: z.uuid(),
  step: stepKind,
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
