import 'server-only'
import { z } from 'zod'
import { costs } from '../evidence/figures'

/**
 * What the doughs of a trial cost, as it was shown to those who see costs, and what it was worked out from. Amounts as
 * decimal text.
 */
export const costsOfFormat1 = z.strictObject({
  format: z.literal(1),
  ...costs.shape,
  rests: z.strictObject({
    piecesPlanned: z.int(),
    arms: z.array(
      z.strictObject({
        arm: z.int(),
        lines: z.array(
          z.strictObject({
            ingredientId: z.string(),
            name: z.string(),
            /** As it goes into one dough. */
            massG: z.number(),
            isWater: z.boolean(),
            /** Of the day; minor units per kg as decimal text. */
            price: z.strictObject({ validFrom: z.string(), perKgMinor: z.string(), currency: z.string() }).nullable(),
          }),
        ),
        addedIngredientId: z.string().nullable(),
        goodPieces: z.array(z.int().nullable()),
        loafMassG: z.number().nullable(),
        loafVolumeMl: z.number().nullable(),
      }),
    ),
  }),
})

export type CostsOfFormat1 = z.output<typeof costsOfFormat1>
