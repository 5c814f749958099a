import 'server-only'
import { z } from 'zod'
import { arm, dose, line, plan, waterUnknown } from './parts'

const source = z.discriminatedUnion('outcome', [
  z.strictObject({ outcome: z.literal('mix'), coldMassG: z.number(), hotMassG: z.number(), iceMassG: z.literal(0) }),
  z.strictObject({ outcome: z.literal('ice'), coldMassG: z.number(), hotMassG: z.literal(0), iceMassG: z.number() }),
  z.strictObject({
    outcome: z.literal('not-possible'),
    reason: z.enum(['colder-than-all-ice', 'hotter-than-allowed', 'too-much-ice', 'never-melts']),
    reachableTempC: z.number(),
  }),
])

const water = z.discriminatedUnion('outcome', [
  z.strictObject({
    outcome: z.literal('known'),
    waterTempC: z.number(),
    waterG: z.number(),
    source,
    isGuess: z.boolean(),
    frictionC: z.number(),
  }),
  waterUnknown,
])

/**
 * A plan from when there was one scale for all lines, the water was said as masses of cold, hot and ice, and every dose
 * was so much more than the control.
 */
export const planOfFormat1 = z.strictObject({
  format: z.literal(1),
  ...plan,
  arms: z.array(z.strictObject({ ...arm, doses: z.array(dose), lines: z.array(line), water })),
})

export type PlanOfFormat1 = z.output<typeof planOfFormat1>
