import { z } from 'zod'
import { note } from '../text.input'

/** Times are typed in minutes and kept in seconds; a week is the longest. */
const minutes = z.number().min(0).max(10_080)

const stage = z.strictObject({
  kind: z.enum(['final_dough', 'pre_ferment', 'scald', 'soaker']),
  /** Empty where the kind says enough. */
  name: note(80),
  lines: z
    .array(
      z.strictObject({
        ingredientId: z.uuid(),
        /** On all flour of all stages, which makes 100. */ pctFlour: z.number().gt(0).max(1000),
      }),
    )
    .min(1)
    .max(60),
})

/** Why a version is drafted. */
export const draftReason = note(1000).min(1)

/** What a version says apart from its reason; the flour is added up by the command, which knows the ingredients. */
export const formulaContent = z.strictObject({
  pieces: z.int().min(1).max(10_000),
  scalingMassG: z.number().gt(0).max(50_000),
  /** Part of the dough that does not reach the pieces, % of dough. */
  doughLossPct: z.number().min(0).lt(50),
  doughTempC: z.number().min(0).max(45),
  mixTimeMin: minutes,
  bulkTimeMin: minutes,
  proofTimeMin: minutes,
  bakeTempC: z.number().min(50).max(400),
  bakeTimeMin: minutes,
  method: note(8000),
  stages: z
    .array(stage)
    .min(1)
    .max(12)
    .refine((stages) => stages.filter(({ kind }) => kind === 'final_dough').length === 1, {
      params: { code: 'one-final-dough' },
    }),
})

export type FormulaContent = z.output<typeof formulaContent>
