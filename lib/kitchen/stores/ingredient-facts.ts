import 'server-only'

/** The columns in which an ingredient's facts stand, for the page that shows them and the record of what they were. */
export const ingredientFacts = {
  name: true,
  kind: true,
  labelName: true,
  activeName: true,
  activeShare: true,
  customaryLeastPct: true,
  customaryMostPct: true,
  customarySource: true,
  allergens: true,
  allergensCheckedAt: true,
  dustCaution: true,
  countsAsUsual: true,
  counts: true,
  bindsWater: true,
  note: true,
  endedAt: true,
} as const
