import 'server-only'
import { z } from 'zod'
import { arm, plan, scale, stageKind } from './parts'
import { doseOfFormat2, lineOfFormat2, waterOfFormat2 } from './plan-of-format-2'

const choice = z.strictObject({
  stageKind,
  ingredientId: z.string(),
  mayMove: z.boolean().nullable(),
  scaleId: z.string().nullable(),
  ingredient: z.string(),
})

/** A plan with what was chosen for its lines beside the rules, and doses that take all of another out. */
export const planOfFormat3 = z.strictObject({
  format: z.literal(3),
  ...plan,
  scales: z.array(scale),
  choices: z.array(choice),
  arms: z.array(
    z.strictObject({
      ...arm,
      doses: z.array(z.strictObject({ ...doseOfFormat2.shape, allOfIt: z.boolean() })),
      lines: z.array(lineOfFormat2),
      water: waterOfFormat2,
    }),
  ),
})

export type PlanOfFormat3 = z.output<typeof planOfFormat3>
