import 'server-only'
import { z } from 'zod'
import { shownOfFormat2 } from '../evidence-shown/shown-of-format-2'

const {
  format: _,
  calculations: __,
  trial: ___,
  declared: ____,
  readings: _____,
  arms,
  ...figures
} = shownOfFormat2.shape

const person = z.strictObject({ id: z.string(), name: z.string() })
const hash = z.string().regex(/^[0-9a-f]{64}$/)

/**
 * What came after the readings of a trial were closed: its amendments as they were frozen, in the order in which they were
 * proposed, what was said of each, who signed that the first result rested on a slip, and the figures of the second one.
 */
export const amendmentsOfFormat1 = z.strictObject({
  format: z.literal(1),
  amendments: z.array(
    z.strictObject({
      text: z.string(),
      hash,
      verdict: z
        .strictObject({
          isAccepted: z.boolean(),
          as: z.enum(['second_person', 'witness', 'alone']),
          note: z.string(),
          by: person,
          at: z.string(),
        })
        .nullable(),
    }),
  ),
  /** Late entries that could not be read as a reading of the trial. */
  unread: z.int(),
  /** Hash of the accepted ones in the order of their acceptance; null where there is none. */
  amended: hash.nullable(),
  slip: z.array(
    z.strictObject({
      as: z.enum(['owner', 'head_baker', 'witness', 'alone']),
      isLast: z.boolean(),
      reason: z.string(),
      by: person,
      at: z.string(),
    }),
  ),
  /** With the accepted ones put in, by the same rule; null where there is none. */
  second: z
    .strictObject({ ...figures, arms: z.array(arms.element.omit({ id: true, name: true, good: true })) })
    .nullable(),
})

export type AmendmentsOfFormat1 = z.output<typeof amendmentsOfFormat1>
