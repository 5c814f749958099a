import 'server-only'
import { z } from 'zod'
import { closingOfFormat1 } from './closing-of-format-1'

const part = z.enum(['line', 'dose', 'premix'])
const person = z.strictObject({ id: z.string(), name: z.string() })

/** What the plan has on the scales, the same lines for every dough: one that has nothing of a line has 0 g of it. */
const line = z.strictObject({
  stage: z.strictObject({
    id: z.string(),
    kind: z.enum(['final_dough', 'pre_ferment', 'scald', 'soaker']),
    name: z.string(),
  }),
  ingredient: z.strictObject({ id: z.string(), name: z.string() }),
  part,
  /** The doughs are about it. */
  isDose: z.boolean(),
  /** By arm, with the steps of its scale, and how far off it may be; null for what takes as much as it takes. */
  targets: z.array(
    z.strictObject({ arm: z.int(), massG: z.number(), stepG: z.number(), toleranceG: z.number().nullable() }),
  ),
})

const entry = z.strictObject({
  id: z.string(),
  dough: z.string(),
  stage: z.string(),
  ingredient: z.string(),
  part,
  how: z.enum(['ticked', 'weighed', 'left_out']),
  /** Where it was weighed: in g, and as it was typed. */
  massG: z.number().nullable(),
  massEntered: z.string().nullable(),
  unitEntered: z.string().nullable(),
  by: person,
  takenAt: z.string(),
  receivedAt: z.string(),
  /** The weighing that this one takes the place of, and why. */
  supersedes: z.string().nullable(),
  reason: z.string().nullable(),
})

/**
 * Format 1 with what the verdict was declared to be said of, what was weighed of each dough, what was found later, and
 * what was done to make good for doughs and days that were lost.
 */
export const closingOfFormat2 = z.strictObject({
  ...closingOfFormat1.shape,
  format: z.literal(2),
  declared: z.strictObject({
    ...closingOfFormat1.shape.declared.shape,
    holdsFor: z.enum(['any_day', 'these_days']),
  }),
  weighings: z.strictObject({ lines: z.array(line), entries: z.array(entry) }),
  /** Causes that were found later, and who signed that a dough is set aside for one. */
  found: z.array(
    z.strictObject({
      id: z.string(),
      dough: z.string(),
      object: z.enum(['ingredient_left', 'tasted', 'stock_count', 'other']),
      what: z.string(),
      by: person,
      at: z.string(),
      signed: z.strictObject({ as: z.enum(['second_person', 'alone']), by: person, at: z.string() }).nullable(),
    }),
  ),
  /** What was done about losses, in its order; doughs and places by code, mixing days by number. */
  repairs: z.array(
    z.strictObject({
      id: z.string(),
      number: z.int(),
      kind: z.enum(['bake_again', 'swap', 'add_day']),
      code: z.string().nullable(),
      otherCode: z.string().nullable(),
      day: z.int().nullable(),
      otherDay: z.int().nullable(),
      why: z.string().nullable(),
      by: person,
      at: z.string(),
    }),
  ),
})

export type ClosingOfFormat2 = z.output<typeof closingOfFormat2>
