export const DOUGH_WATER_WARNINGS = ['no-water', 'stiffer-than-dough', 'wetter-than-dough'] as const
export type DoughWaterWarning = (typeof DOUGH_WATER_WARNINGS)[number]

/** A noodle dough has about 30 % of water on flour, a pourable batter about 150 %: common practice, no source. */
const DOUGH_PCT = { least: 25, most: 150 }

/**
 * What is odd about water on flour, %. Batters and crumbs are worked out like doughs, so it is said and not refused.
 */
export function doughWaterWarnings(pctFlour: number): DoughWaterWarning[] {
  if (pctFlour === 0) return ['no-water']
  if (pctFlour < DOUGH_PCT.least) return ['stiffer-than-dough']
  return pctFlour > DOUGH_PCT.most ? ['wetter-than-dough'] : []
}
