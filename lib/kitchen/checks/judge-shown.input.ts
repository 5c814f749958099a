/**
 * What a thermometer shows in crushed ice and water, °C.
 * Source: Measurement Standards Laboratory of New Zealand, Technical Guide 1, The Ice Point, version 3 (2019): ice and
 * air-saturated water are at 0.0 °C almost exactly.
 */
export const icePointC = 0

/** A thermometer of a kitchen that is nearer than this is not told from one that is right. Common practice, no source. */
const leastOffC = 0.5

/** What share of its block a volume gauge may be off unless the bakery says otherwise. Common practice, no source. */
export const offMostShareOfBlock = 0.02

/** The kinds of equipment that are checked. */
export const checkedKinds = ['scale', 'thermometer', 'volume_gauge'] as const
export type CheckedKind = (typeof checkedKinds)[number]

/** How far off a scale may be, g: as the bakery says, otherwise one of its steps. Common practice, no source. */
export function offMostOfScale({ offMostG, resolutionG }: { offMostG: number | null; resolutionG: number }): number {
  return offMostG ?? resolutionG
}

/** How far off a thermometer may be, °C: as the bakery says, otherwise one of its steps and at least half a degree. */
export function offMostOfThermometer(q: { offMostC: number | null; resolutionC: number }): number {
  return q.offMostC ?? Math.max(q.resolutionC, leastOffC)
}

/** How far off a volume gauge may be, mL: as the bakery says, otherwise a share of the block that it is checked with. */
export function offMostOfGauge({ offMostMl, blockMl }: { offMostMl: number | null; blockMl: number }): number {
  return offMostMl ?? toMillionth(blockMl * offMostShareOfBlock)
}

/**
 * How far what was shown is from what is known, and whether that is near enough. The difference is taken to a millionth,
 * which no scale shows, so that a tenth off is a tenth off.
 */
export function judgeShown(q: { shown: number; known: number; offMost: number }): { off: number; isGood: boolean } {
  const off = toMillionth(q.shown - q.known)
  return { off, isGood: Math.abs(off) <= q.offMost }
}

function toMillionth(value: number): number {
  return Math.round(value * 1e6) / 1e6
}
