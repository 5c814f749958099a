import 'server-only'
import { z } from 'zod'
import { amount, good } from '../evidence/figures'

const line = z.strictObject({
  ingredientId: z.string(),
  name: z.string(),
  massG: z.number(),
  isWater: z.boolean(),
  /** Of the day; minor units per kg as decimal text. */
  price: z.strictObject({ validFrom: z.string(), perKgMinor: z.string(), currency: z.string() }).nullable(),
})

/**
 * What the doughs of a trial cost, as it was shown to those who see costs, and what it was worked out from. Amounts as
 * decimal text.
 */
export const costsOfFormat1 = z.strictObject({
  format: z.literal(1),
  day: z.string(),
  currency: z.string().nullable(),
  latestPriceFrom: z.string().nullable(),
  arms: z.array(
    z.strictObject({
      arm: z.int(),
      unpriced: z.array(z.string()),
      mixedCurrencies: z.boolean(),
      good: good.nullable(),
      perBatch: amount,
      perLoaf: amount,
      perKg: amount,
      perLitre: amount,
      differencePerLoaf: amount,
    }),
  ),
  rests: z.strictObject({
    scaling: z.strictObject({ scalingMassG: z.number(), doughLossPct: z.number() }),
    arms: z.array(
      z.strictObject({
        arm: z.int(),
        /** Of one dough as it was worked out, and as it was weighed and mixed. */
        lines: z.array(line),
        mixedLines: z.array(line),
        goodPieces: z.array(z.int().nullable()),
        loafMassG: z.number().nullable(),
        loafVolumeMl: z.number().nullable(),
      }),
    ),
  }),
})

export type CostsOfFormat1 = z.output<typeof costsOfFormat1>
