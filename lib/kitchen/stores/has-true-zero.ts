import 'server-only'

/** Units whose zero is a convention: twice as much of it means nothing. Colour as in ISO/CIE 11664-4. */
const withoutTrueZero = new Set(['°c', '°f', 'ph', 'l*', 'a*', 'b*', 'point', 'points', 'score', 'scores'])

/**
 * Whether a measure has a zero that means none of it, so that percentages of the control say something. By its unit,
 * and by whether it can be below zero where that is known.
 * Source: Stevens (1946), "On the theory of scales of measurement", Science 103 (ratio and interval scales); from memory.
 */
export function hasTrueZero({ unit, plausibleLeast }: { unit: string; plausibleLeast?: number }): boolean {
  return !withoutTrueZero.has(unit.trim().toLowerCase()) && (plausibleLeast ?? 0) >= 0
}
