import 'server-only'
import { z } from 'zod'

/** Who knew which dough was which, who entered readings knowing it, and who looked, until the evidence was kept. */
export const knowingOfFormat1 = z.strictObject({
  format: z.literal(1),
  /** `code` of the one dough that they knew; null for all of them. */
  knowers: z.array(z.strictObject({ name: z.string(), code: z.string().nullable(), at: z.string() })),
  lookers: z.array(
    z.strictObject({
      name: z.string(),
      what: z.enum(['key', 'result', 'evidence']),
      first: z.string(),
      days: z.int(),
    }),
  ),
  measures: z.array(
    z.strictObject({
      measure: z.strictObject({ code: z.string().nullable(), name: z.string() }),
      readings: z.int(),
      byKnowers: z.int(),
      /** Of doughs whose key nobody had opened, so that nothing is kept of who knew. */
      unknown: z.int(),
    }),
  ),
  /** Readings that correct another, by somebody who knew. */
  correctedKnowing: z.array(z.string()),
})

export type KnowingOfFormat1 = z.output<typeof knowingOfFormat1>
