/** A mean below this share of the spread is no measure of it. */
const LEAST_MEAN = 1e-9

/**
 * Spread in % of the mean; null where the mean is not above zero, or is next to nothing beside the spread.
 * @param sd ≥ 0; @param mean in the same unit
 * Source: definition of the coefficient of variation, ISO 3534-1:2006, 2.38.
 * @example cvPct(5, 200) // 2.5
 */
export function cvPct(sd: number, mean: number): number | null {
  return mean > 0 && mean > LEAST_MEAN * sd ? 100 * (sd / mean) : null
}
