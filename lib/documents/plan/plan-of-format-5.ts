import 'server-only'
import { z } from 'zod'
import { planOfFormat4 } from './plan-of-format-4'

/** What was taken of how much the difference between doughs changes by day; null where it was not part of the chance. */
const armByDay = z.strictObject({
  cvPct: z.number(),
  from: z.enum(['own', 'both', 'assumed']),
  assumedCvPct: z.number(),
  ownDf: z.number(),
  trials: z.int(),
})

const power = z.discriminatedUnion('outcome', [
  z.strictObject({
    outcome: z.literal('simulated'),
    runs: z.int(),
    residualDf: z.number(),
    batchCvPct: z.number(),
    loafCvPct: z.number(),
    armByDay: armByDay.nullable(),
    rows: z.array(z.strictObject({ truePct: z.number(), powerShare: z.number(), powerSe: z.number() })),
    otherwise: z
      .strictObject({
        truePct: z.number(),
        mixingDays: z.int(),
        daysPowerShare: z.number(),
        batchesPerArm: z.int(),
        doughsPowerShare: z.number(),
      })
      .nullable(),
  }),
  z.strictObject({ outcome: z.enum(['not-gain', 'one-batch', 'no-degrees', 'margin-in-units', 'no-direction']) }),
])

/** Format 4 with what the chance takes of a difference that changes by day, and what would raise it. */
export const planOfFormat5 = z.strictObject({ ...planOfFormat4.shape, format: z.literal(5), power })

export type PlanOfFormat5 = z.output<typeof planOfFormat5>
