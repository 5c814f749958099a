/**
 * Carrier masses c for which a premix of `takeG` is good enough while the scales stay the same: with relative variance r²
 * of the take, absolute variances of carrier and portion in `fixed`, and what is left of the variance allowed, v:
 * (c²r² + fixed)/(take + c)² ≤ v, a quadratic in c.
 * @param fixed u_carrier² + (u_portion · take/portion of what is taken)², g²
 * @returns null when there is none; `toG` may be infinite
 * Source: law of propagation of uncertainty, JCGM 100:2008 (GUM), 5.1.2.
 */
export function carrierRangeG(q: {
  takeG: number
  takeVariance: number
  fixed: number
  leftVariance: number
}): { fromG: number; toG: number } | null {
  const { takeG, takeVariance, fixed, leftVariance: v } = q
  if (v <= 0) return null
  const a = takeVariance - v
  const b = -2 * takeG * v
  const c = fixed - v * takeG * takeG
  if (Math.abs(a) <= 1e-14 * v) return { fromG: Math.max(0, c / -b), toG: Infinity }
  const discriminant = b * b - 4 * a * c
  if (discriminant < 0) return a < 0 ? { fromG: 0, toG: Infinity } : null
  // b is negative, so the first root is free of cancellation; the other follows from their product.
  const far = (-b + Math.sqrt(discriminant)) / (2 * a)
  const near = c / (a * far)
  // Opening downward, all beyond the larger root is good; a smaller one that is positive would need fixed < 0.
  return a < 0 ? { fromG: Math.max(0, near, far), toG: Infinity } : { fromG: Math.max(0, near), toG: far }
}
