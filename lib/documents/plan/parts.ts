import 'server-only'
import { z } from 'zod'

/*
 * What plans of the formats 1 to 3 have alike. Never edited: texts that were hashed are in it. A later format that
 * wants one of these otherwise spells out its own.
 */

export const stageKind = z.enum(['final_dough', 'pre_ferment', 'scald', 'soaker'])
const ingredientKind = z.enum([
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
])
const heldTotal = z.enum(['dough_mass', 'water', 'fat', 'sugars', 'salt', 'protein', 'flour'])
const allergen = z.enum([
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
])

/** What was declared before baking. */
const declared = z.strictObject({
  bakery: z.string(),
  trial: z.string(),
  number: z.int(),
  kind: z.enum(['gain', 'no_worse', 'same_as', 'which_dose', 'look_only']),
  question: z.string(),
  note: z.string(),
  formula: z.strictObject({ id: z.string(), name: z.string() }),
  controlVersion: z.strictObject({ id: z.string(), number: z.int(), contentHash: z.string().nullable() }),
  measure: z.strictObject({
    id: z.string(),
    name: z.string(),
    unit: z.string(),
    digits: z.int(),
    level: z.enum(['batch', 'piece']),
    direction: z.enum(['larger', 'smaller', 'none']),
  }),
  margin: z.number(),
  marginUnit: z.enum(['pct', 'unit']),
  confidencePct: z.number(),
  mixingDays: z.int(),
  batchesPerArm: z.int(),
  piecesPerBatch: z.int(),
  /** Left out where nothing is set apart within doughs. */
  factor: z.strictObject({ name: z.string(), levels: z.array(z.string()) }).optional(),
  heldTotals: z.array(heldTotal),
  flourTempC: z.number(),
  roomTempC: z.number(),
  tapTempC: z.number(),
})

const processing = z.strictObject({
  scalingMassG: z.number(),
  doughLossPct: z.number(),
  doughTempC: z.number(),
  mixTimeS: z.number(),
  bulkTimeS: z.number(),
  proofTimeS: z.number(),
  bakeTempC: z.number(),
  bakeTimeS: z.number(),
})

export const scale = z.strictObject({
  id: z.string(),
  name: z.string(),
  resolutionG: z.number(),
  repeatabilityG: z.number().nullable(),
  leastG: z.number().nullable(),
  mostG: z.number(),
})

const mixer = z.strictObject({
  id: z.string(),
  name: z.string(),
  leastG: z.number(),
  mostG: z.number(),
  frictionCPerMin: z.number().nullable(),
})

const premix = z.discriminatedUnion('outcome', [
  z.strictObject({
    outcome: z.enum(['direct', 'premix']),
    steps: z.array(
      z.strictObject({
        takeG: z.number(),
        takeScaleId: z.string(),
        carrierG: z.number(),
        carrierScaleId: z.string(),
        totalG: z.number(),
        productShare: z.number(),
      }),
    ),
    portionG: z.number(),
    portionScaleId: z.string(),
    carrierInPortionG: z.number(),
    errorShare: z.number(),
    premixMadeG: z.number(),
    productLeftG: z.number(),
  }),
  z.strictObject({ outcome: z.literal('not-possible'), bestErrorShare: z.number().nullable() }),
])

const weighing = z.strictObject({ errorPct: z.number(), leastG: z.number(), premix: premix.nullable() })

/** A dose that is so much more than the control. */
export const dose = z.strictObject({
  ingredientId: z.string(),
  basis: z.enum(['pct_flour', 'ppm_flour', 'g_per_kg_flour']),
  doseOf: z.enum(['product', 'active']),
  value: z.number(),
  ingredient: z.string(),
  activeName: z.string().nullable(),
  activeShare: z.number().nullable(),
  productG: z.number(),
  productPctFlour: z.number(),
  weighing: weighing.nullable(),
})

/** A line of one dough, on the one scale of the plan. */
export const line = z.strictObject({
  stageId: z.string(),
  ingredientId: z.string(),
  ingredient: z.string(),
  kind: ingredientKind,
  dose: z.int().nullable(),
  controlG: z.number(),
  exactG: z.number(),
  weighedG: z.number(),
  changeG: z.number(),
  atBound: z.enum(['min', 'max']).nullable(),
})

const total = z.strictObject({
  total: heldTotal,
  isHeld: z.boolean(),
  controlG: z.number().nullable(),
  differenceG: z.number().nullable(),
  differencePctFlour: z.number().nullable(),
})

export const waterUnknown = z.strictObject({ outcome: z.enum(['no-plain-water', 'friction-too-high']) })

/** Every code that a plan of format 3 can have; former ones have some of them. */
const warning = z.strictObject({
  code: z.enum([
    'above-customary',
    'below-customary',
    'composition-unknown',
    'allergen-added',
    'allergen-unchecked',
    'dose-coarse',
    'rounded-to-nothing',
    'below-scale',
    'above-scale',
    'chosen-scale-coarse',
    'chosen-scale-below',
    'chosen-scale-above',
    'chosen-scale-gone',
    'no-scale',
    'balance-no-movable-line-carries-it',
    'balance-dose-brings-more-than-can-go',
    'balance-totals-conflict',
    'balance-scale-too-coarse',
    'balance-not-stated',
    'line-emptied',
    'composition-above-100',
    'looks-like-share',
    'balance-asked-about',
    'water-to-consistency',
    'mixer-below',
    'mixer-above',
    'one-batch-per-arm',
    'place-tied-to-allergen',
    'dust',
    'ingredient-ended',
  ]),
  dose: z.int().nullable(),
  facts: z.record(z.string(), z.union([z.string(), z.number()])),
})

/** An arm but for its doses, lines and water. */
export const arm = {
  position: z.int(),
  name: z.string(),
  onTop: z.boolean(),
  outcome: z.enum(['control', 'on-top', 'balanced', 'nothing-to-balance', 'not-balanced']),
  totals: z.array(total),
  doughG: z.number(),
  doughWeighedG: z.number(),
  allergens: z.array(allergen),
  addedAllergens: z.array(allergen),
  uncheckedIngredients: z.array(z.string()),
  warnings: z.array(warning),
}

const order = z.strictObject({
  method: z.string(),
  seed: z.string(),
  batches: z.array(
    z.strictObject({ day: z.int(), place: z.int(), arm: z.int(), code: z.string(), cleanDownOf: z.array(z.string()) }),
  ),
  cleanDownAfterDay: z.array(z.strictObject({ day: z.int(), of: z.array(z.string()) })),
})

const power = z.discriminatedUnion('outcome', [
  z.strictObject({
    outcome: z.literal('simulated'),
    runs: z.int(),
    residualDf: z.number(),
    batchCvPct: z.number(),
    loafCvPct: z.number(),
    rows: z.array(z.strictObject({ truePct: z.number(), powerShare: z.number(), powerSe: z.number() })),
  }),
  z.strictObject({ outcome: z.enum(['not-gain', 'one-batch', 'no-degrees', 'margin-in-units', 'no-direction']) }),
])

/** A plan but for its format, scales, choices and arms. */
export const plan = {
  declared,
  process: processing,
  stages: z.array(z.strictObject({ id: z.string(), kind: stageKind, name: z.string() })),
  scale: scale.nullable(),
  mixer: mixer.nullable(),
  size: z.strictObject({
    doughs: z.int(),
    pieces: z.int(),
    flourG: z.number(),
    doughG: z.number(),
    doughInAllG: z.number(),
  }),
  order: order.nullable(),
  power,
  warnings: z.array(warning),
}
