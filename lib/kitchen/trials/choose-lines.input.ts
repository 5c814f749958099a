import { z } from 'zod'
import { seenRevision } from '../text.input'

const stageKind = z.enum(['final_dough', 'pre_ferment', 'scald', 'soaker'])

const line = z
  .strictObject({
    stageKind,
    ingredientId: z.uuid(),
    /** Null as is usual of its kind. */
    mayMove: z.boolean().nullable(),
    /** Null as the rule finds it. */
    scaleId: z.uuid().nullable(),
  })
  // Pre-ferments, scalds and soakers are made once for all doughs.
  .refine(({ stageKind: kind, mayMove }) => mayMove === null || kind === 'final_dough', {
    path: ['mayMove'],
    params: { code: 'wrong-choice' },
  })

export const chooseLinesInput = z.strictObject({
  trialId: z.uuid(),
  seenRevision,
  lines: z
    .array(line)
    .max(200)
    .refine(
      (lines) =>
        new Set(lines.map(({ stageKind: kind, ingredientId }) => `${kind} ${ingredientId}`)).size === lines.length,
      { params: { code: 'wrong-choice' } },
    ),
})
