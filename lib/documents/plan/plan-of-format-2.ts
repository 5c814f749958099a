import 'server-only'
import { z } from 'zod'
import { arm, dose, line, plan, scale, waterUnknown } from './parts'

/** A dose that says how it is meant: more or less, so much in all, or in place of another. */
export const doseOfFormat2 = z.strictObject({
  ...dose.shape,
  how: z.enum(['more', 'in_all', 'in_place']),
  insteadOfId: z.string().nullable(),
  insteadOf: z.string().nullable(),
  equalBy: z.enum(['mass', 'active', 'water', 'fat', 'sugars', 'protein', 'salt']).nullable(),
  controlG: z.number(),
  inAllG: z.number(),
  removedG: z.number(),
})

export const lineOfFormat2 = z.strictObject({ ...line.shape, scaleId: z.string().nullable() })

const parts = z.array(
  z.strictObject({
    from: z.enum(['tap', 'hot', 'chilled', 'ice']),
    massG: z.number(),
    tempC: z.number(),
    isUsual: z.boolean(),
  }),
)

const way = z.discriminatedUnion('outcome', [
  z.strictObject({ outcome: z.literal('mix'), parts }),
  z.strictObject({
    outcome: z.literal('not-possible'),
    reason: z.enum(['colder-than-all-ice', 'hotter-than-allowed', 'too-much-ice', 'never-melts']),
    nearestTempC: z.number(),
    parts,
    doughTempC: z.number().nullable(),
  }),
])

export const waterOfFormat2 = z.discriminatedUnion('outcome', [
  z.strictObject({
    outcome: z.literal('known'),
    waterTempC: z.number(),
    waterG: z.number(),
    resolutionG: z.number(),
    way,
    isGuess: z.boolean(),
    frictionC: z.number(),
  }),
  waterUnknown,
])

/** A plan from when nothing could be chosen for a line, and what was replaced had an amount. */
export const planOfFormat2 = z.strictObject({
  format: z.literal(2),
  ...plan,
  scales: z.array(scale),
  arms: z.array(
    z.strictObject({ ...arm, doses: z.array(doseOfFormat2), lines: z.array(lineOfFormat2), water: waterOfFormat2 }),
  ),
})

export type PlanOfFormat2 = z.output<typeof planOfFormat2>
