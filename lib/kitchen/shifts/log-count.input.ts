import { z } from 'zod'
import { instant } from '../text.input'
import { mostPieces } from './count-fault.input'

const pieces = z.int().min(0).max(mostPieces)

/** What became of the pieces of a dough; left out for what nobody says. */
export const becameOfPieces = {
  sampled: pieces.nullish(),
  sold: pieces.nullish(),
  given: pieces.nullish(),
  wasted: pieces.nullish(),
}

/** One count of the pieces of one dough, as a device or a script sends it. */
export const logCountInput = z.strictObject({
  /** Made by the device when the count is kept; the same id is never used for another one. */
  id: z.uuidv7(),
  batchId: z.uuid(),
  made: pieces,
  good: pieces,
  ...becameOfPieces,
  /** By how much the book's clock is ahead of the device's, as far as the device knows. */
  clockAheadS: z.int().min(-2_000_000_000).max(2_000_000_000).nullish(),
  /** By the device's own clock. */
  takenAt: instant,
})
export type CountEntry = z.output<typeof logCountInput>
