/**
 * Standard error of a function of estimates by its gradient (delta method).
 * @param gradient by each estimate; @param covariance of the estimates
 * Source: JCGM 100:2008 (GUM), 5.2.2.
 * @example deltaSe([1, 1], [[1, 0], [0, 3]]) // 2
 */
export function deltaSe(gradient: readonly number[], covariance: readonly (readonly number[])[]): number {
  const variance = gradient.reduce(
    (sum, a, i) => sum + a * gradient.reduce((inner, b, j) => inner + b * covariance[i]![j]!, 0),
    0,
  )
  return Math.sqrt(Math.max(0, variance))
}
