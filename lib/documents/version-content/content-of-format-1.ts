import 'server-only'
import { z } from 'zod'

const ingredient = z.strictObject({
  id: z.uuid(),
  name: z.string(),
  kind: z.enum([
    'flour',
    'water',
    'salt',
    'leaven',
    'fat',
    'sugar',
    'dairy',
    'egg',
    'malt',
    'improver',
    'seed_or_grain',
    'other',
  ]),
  /** Those that are known; only when they were checked are these all. */
  allergens: z.array(
    z.enum([
      'gluten',
      'crustaceans',
      'egg',
      'fish',
      'peanuts',
      'soya',
      'milk',
      'nuts',
      'celery',
      'mustard',
      'sesame',
      'sulphites',
      'lupin',
      'molluscs',
    ]),
  ),
  allergensChecked: z.boolean(),
})

/** What a version of a formula says. */
export const contentOfFormat1 = z.strictObject({
  format: z.literal(1),
  bakery: z.uuid(),
  formula: z.strictObject({ id: z.uuid(), name: z.string() }),
  version: z.strictObject({
    id: z.uuid(),
    number: z.int(),
    from: z.uuid().nullable(),
    reason: z.string(),
    draftedBy: z.strictObject({ id: z.uuid(), name: z.string() }),
  }),
  /** Only of a version that was drafted from an arm of a trial: the decision, and SHA-256 of the evidence frozen with it. */
  evidence: z.strictObject({ decision: z.uuid(), hash: z.string().regex(/^[0-9a-f]{64}$/) }).optional(),
  batch: z.strictObject({ pieces: z.int(), scalingMassG: z.number(), doughLossPct: z.number() }),
  process: z.strictObject({
    doughTempC: z.number(),
    mixTimeS: z.int(),
    bulkTimeS: z.int(),
    proofTimeS: z.int(),
    bakeTempC: z.number(),
    bakeTimeS: z.int(),
    method: z.string(),
  }),
  stages: z.array(
    z.strictObject({
      kind: z.enum(['final_dough', 'pre_ferment', 'scald', 'soaker']),
      name: z.string(),
      lines: z.array(z.strictObject({ ingredient, pctFlour: z.number() })),
    }),
  ),
})

export type ContentOfFormat1 = z.output<typeof contentOfFormat1>
