import { z } from 'zod'
import { line, note } from '../text.input'

export const ingredientKind = z.enum([
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
export type IngredientKind = z.output<typeof ingredientKind>

/** The fourteen of Annex II to Regulation (EU) No 1169/2011, in its order. */
export const allergen = z.enum([
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
export type Allergen = z.output<typeof allergen>

/** Constituents that a specification states. Carbohydrate is by difference and includes fibre; salt is sodium × 2.5. */
export const figure = z.enum(['water', 'protein', 'fat', 'carbohydrate', 'sugars', 'fibre', 'salt'])
export type Figure = z.output<typeof figure>

/** What of an ingredient counts in the totals of a dough. */
export const countedPart = z.enum(['water', 'fat', 'sugars', 'protein'])

const range = z
  .strictObject({ leastPct: z.number().min(0).max(200), mostPct: z.number().min(0).max(200), source: line(200) })
  .refine(({ leastPct, mostPct }) => mostPct >= leastPct, { path: ['mostPct'], params: { code: 'below-least' } })

/** What a bakery writes down of an ingredient. A figure that is left out is unknown, never zero. */
export const ingredientFacts = z.strictObject({
  name: line(120),
  labelName: line(200),
  kind: ingredientKind,
  /** The substance that does the work, and how much of the product it is, % by mass. */
  active: z.strictObject({ name: line(80), pct: z.number().gt(0).max(100) }).nullable(),
  /** What is commonly used, % of the product on flour. Not a legal limit. */
  customary: range.nullable(),
  allergens: z.array(allergen).max(14),
  dustCaution: z.boolean(),
  /** What of it counts in the totals that test doughs hold; null for what is usual of its kind. */
  counts: z.array(countedPart).max(4).nullable().default(null),
  /** Takes up so much water that equal water makes no equal dough: gluten, fibre, wholemeal, flakes, pre-gelatinised starch. */
  bindsWater: z.boolean().default(false),
  note: note(2000),
  /** g in 100 g as weighed, each with where it is from. */
  figures: z.partialRecord(figure, z.strictObject({ gPer100G: z.number().min(0).max(100), source: line(200) })),
})

export type IngredientFacts = z.output<typeof ingredientFacts>
