import 'server-only'
import { z } from 'zod'
import { amount } from '../evidence/figures'
import { costsOfFormat1 } from './costs-of-format-1'

const { arms, rests } = costsOfFormat1.shape

const volume = z.strictObject({ ratio: z.number(), low: z.number().nullable(), high: z.number().nullable() })
const priced = z.strictObject({
  outcome: z.enum(['up-to', 'from', 'never', 'always', 'no-bearing']),
  perKg: amount,
})

/** Format 1 with the price of what an arm doses at which a litre of its bread costs as much as the control's. */
export const costsOfFormat2 = z.strictObject({
  ...costsOfFormat1.shape,
  format: z.literal(2),
  arms: z.array(
    z.strictObject({
      ...arms.element.shape,
      /** Null for the control. */
      sameVolume: z
        .discriminatedUnion('outcome', [
          z.strictObject({ outcome: z.enum(['several-doses', 'not-measured', 'not-costed']) }),
          z.strictObject({
            outcome: z.literal('worked-out'),
            ingredient: z.string(),
            volume,
            at: priced,
            low: priced.nullable(),
            high: priced.nullable(),
          }),
        ])
        .nullable(),
    }),
  ),
  rests: z.strictObject({
    ...rests.shape,
    arms: z.array(
      z.strictObject({
        ...rests.shape.arms.element.shape,
        /** Ingredients that it doses. */
        dosed: z.array(z.string()),
        /** Of its loaves, over the control's. */
        volume: volume.nullable(),
      }),
    ),
  }),
})

export type CostsOfFormat2 = z.output<typeof costsOfFormat2>
