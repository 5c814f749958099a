/** Gluten cereals and nuts one by one, because the EU names them; the rest by group. */
export const ALLERGENS = [
  'wheat',
  'spelt',
  'khorasan-wheat',
  'rye',
  'barley',
  'oats',
  'crustaceans',
  'egg',
  'fish',
  'peanuts',
  'soya',
  'milk',
  'almonds',
  'hazelnuts',
  'walnuts',
  'cashews',
  'pecans',
  'brazil-nuts',
  'pistachios',
  'macadamia-nuts',
  'celery',
  'mustard',
  'sesame',
  'sulphites',
  'lupin',
  'molluscs',
] as const

export type Allergen = (typeof ALLERGENS)[number]

/** What somebody says of an ingredient: an allergen in it, or that there is none. Nothing said is neither. */
export const ALLERGEN_STATEMENTS = [...ALLERGENS, 'none'] as const
export type AllergenStatement = (typeof ALLERGEN_STATEMENTS)[number]

/** What a region's rule lists: the EU has 'gluten', the United States 'wheat'. */
export const ALLERGEN_GROUPS = [
  'gluten',
  'wheat',
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
] as const

export type AllergenGroup = (typeof ALLERGEN_GROUPS)[number]

export const REGIONS = ['eu', 'us'] as const
export type LabelRegion = (typeof REGIONS)[number]

/** Names of the classes that stand before an additive. Regulation (EU) 1169/2011, Annex VII, Part C; the list is from memory. */
export const ADDITIVE_CLASSES = [
  'acid',
  'acidity-regulator',
  'anti-caking-agent',
  'anti-foaming-agent',
  'antioxidant',
  'bulking-agent',
  'colour',
  'emulsifier',
  'emulsifying-salts',
  'firming-agent',
  'flavour-enhancer',
  'flour-treatment-agent',
  'foaming-agent',
  'gelling-agent',
  'glazing-agent',
  'humectant',
  'modified-starch',
  'preservative',
  'propellent-gas',
  'raising-agent',
  'sequestrant',
  'stabiliser',
  'sweetener',
  'thickener',
] as const

export type AdditiveClass = (typeof ADDITIVE_CLASSES)[number]

/** How the EU has an ingredient named: an additive after its class, modified starch by the class alone or with its grain. */
export const NAMINGS = [
  'name',
  'class-then-name',
  'class-then-name-or-number',
  'class-alone',
  'class-then-grain',
] as const
export type Naming = (typeof NAMINGS)[number]

/** The two kinds of mix whose own list the EU lets be left out below 2 % of the product. */
export const EXEMPT_MIXES = ['defined-by-union-law', 'spices-or-herbs'] as const
export type ExemptMix = (typeof EXEMPT_MIXES)[number]

/** What everything on a label must be shown with; words are in lib/words. */
export const LABEL_CAUTIONS = [
  'draft-for-competent-person',
  'local-rules-decide',
  'traces-not-covered',
  'milk-most-often-missed',
  'sulphites-above-10-mg-per-kg',
  'parts-do-not-add-up',
  'fermentation-not-counted',
  'not-everything-stated',
  'no-allergens-given',
  'some-allergens-not-given',
  'species-not-given',
  'not-on-us-list',
  'one-way-for-us-allergens',
] as const

export type LabelCaution = (typeof LABEL_CAUTIONS)[number]
