export type Component = {
  /** Standard deviation, ≥ 0. */
  sd: number
  /** Degrees of freedom of the mean square it comes from. */
  df: number
  /** The moment estimate of the variance was negative and is taken as zero. */
  heldAtZero: boolean
}

/**
 * A variance estimated by moments, as a standard deviation; a negative one is taken as zero, and that is said.
 * Source: Searle (1971), Linear Models, section 9.8 (negative estimates).
 * @example varianceComponent(-4, 3) // { sd: 0, df: 3, heldAtZero: true }
 */
export function varianceComponent(variance: number, df: number): Component {
  return { sd: Math.sqrt(Math.max(0, variance)), df, heldAtZero: variance < 0 }
}
