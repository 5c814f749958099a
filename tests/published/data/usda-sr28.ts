import type { Composition } from '@/lib/calc/formula/types'

/**
 * Rows of the USDA National Nutrient Database for Standard Reference, release 28 (2015), US Department of
 * Agriculture, Agricultural Research Service. Public domain. Keys are NDB numbers; values per 100 g.
 * Carbohydrate is by difference and includes fibre; null where the release gives no value.
 */
function row(
  waterPct: number,
  proteinPct: number,
  fatPct: number,
  carbohydratePct: number,
  sugarsPct: number | null,
  fibrePct: number,
  ashPct: number,
  sodiumMgPer100g: number,
): Composition {
  return { waterPct, proteinPct, fatPct, carbohydratePct, sugarsPct, fibrePct, ashPct, sodiumMgPer100g }
}

export const USDA_SR28 = {
  /** Wheat bread flour, white, unenriched. */
  ndb20129: row(13.36, 11.98, 1.66, 72.53, 0.31, 2.4, 0.47, 2),
  /** Wheat flour, white, all-purpose, unenriched. */
  ndb20481: row(11.92, 10.33, 0.98, 76.31, 0.27, 2.7, 0.47, 2),
  /** Wheat flour, whole-grain. */
  ndb20080: row(10.74, 13.21, 2.5, 71.97, 0.41, 10.7, 1.58, 2),
  /** Rye flour, medium. */
  ndb20064: row(10.97, 10.88, 1.52, 75.43, 1.1, 11.8, 1.2, 2),
  /** Butter, without salt. */
  ndb01145: row(17.94, 0.85, 81.11, 0.06, 0.06, 0, 0.09, 11),
  /** Oil, olive. */
  ndb04053: row(0, 0, 100, 0, 0, 0, 0, 2),
  /** Milk, whole, 3.25 % milkfat. */
  ndb01077: row(88.13, 3.15, 3.25, 4.8, 5.05, 0, 0.67, 43),
  /** Cream, fluid, heavy whipping. */
  ndb01053: row(57.81, 2.84, 36.08, 2.74, 2.92, 0, 0.53, 27),
  /** Cream, fluid, half and half. */
  ndb01049: row(81.24, 3.13, 10.39, 4.73, 4.13, 0, 0.51, 61),
  /** Yogurt, plain, whole milk. */
  ndb01116: row(87.9, 3.47, 3.25, 4.66, 4.66, 0, 0.72, 46),
  /** Egg, whole, raw, fresh. */
  ndb01123: row(76.15, 12.56, 9.51, 0.72, 0.37, 0, 1.06, 142),
  /** Egg, yolk, raw, fresh. */
  ndb01125: row(52.31, 15.86, 26.54, 3.59, 0.56, 0, 1.71, 48),
  /** Sugars, granulated. */
  ndb19335: row(0.02, 0, 0, 99.98, 99.8, 0, 0.01, 1),
  /** Honey. */
  ndb19296: row(17.1, 0.3, 0, 82.4, 82.12, 0.2, 0.2, 4),
  /** Leavening agents, yeast, baker's, compressed. */
  ndb18374: row(69, 8.4, 1.9, 18.1, 0, 8.1, 1.8, 30),
  /** Leavening agents, yeast, baker's, active dry. */
  ndb18375: row(5.08, 40.44, 7.61, 41.22, 0, 26.9, 5.65, 51),
  /** Leavening agents, baking soda. */
  ndb18372: row(0.2, 0, 0, 0, 0, 0, 36.9, 27360),
  /** Salt, table. */
  ndb02047: row(0.2, 0, 0, 0, 0, 0, 99.8, 38758),
  /** Water, tap, drinking. */
  ndb14411: row(99.9, 0, 0, 0, 0, 0, 0.1, 4),
  /** Vinegar, distilled. */
  ndb02053: row(94.78, 0, 0, 0.04, 0.04, 0, 0.02, 2),
  /** Vinegar, cider. */
  ndb02048: row(93.81, 0, 0, 0.93, 0.4, 0, 0.17, 5),
  /** Acerola (West Indian cherry), raw. */
  ndb09001: row(91.41, 0.4, 0.3, 7.69, null, 1.1, 0.2, 7),
  /** Milk, nonfat, fluid, without added vitamins A and D. */
  ndb01151: row(90.84, 3.37, 0.08, 4.96, 5.09, 0, 0.75, 42),
  /** Cream, fluid, light. */
  ndb01050: row(74.51, 2.96, 19.1, 2.82, 3.67, 0, 0.61, 72),
  /** Vital wheat gluten. */
  ndb48052: row(8.2, 75.16, 1.85, 13.79, 0, 0.6, 1, 29),
} as const
