/** How far a correlation may be from lᵢ lⱼ; far below the accuracy of the probability. */
const TOLERANCE = 1e-10
const LARGEST = 0.9999

/**
 * Loadings lᵢ with ρᵢⱼ = lᵢ lⱼ for all pairs, or null where there are none between −0.9999 and 0.9999.
 * Differences from one control have them when blocks are complete, and always when there are at most two.
 * @param correlation k × k, symmetrical, 1 on the diagonal, k ≥ 1
 * Source: lᵢ² = ρᵢⱼ ρᵢₖ / ρⱼₖ, one common factor, Hochberg & Tamhane (1987), Multiple Comparison Procedures.
 * @example productLoadings([[1, 0.5], [0.5, 1]]) // [0.7071, 0.7071]
 */
export function productLoadings(correlation: readonly (readonly number[])[]): number[] | null {
  const k = correlation.length
  const rho = (i: number, j: number) => correlation[i]![j]!
  if (k === 1) return [0]
  if (k === 2) {
    const size = Math.sqrt(Math.abs(rho(0, 1)))
    return size > LARGEST ? null : [size, rho(0, 1) < 0 ? -size : size]
  }
  const loadings = correlation.map((_, i) => {
    let best = { j: -1, m: -1, size: 0 }
    for (let j = 0; j < k; j++) {
      for (let m = j + 1; m < k; m++) {
        if (j !== i && m !== i && Math.abs(rho(j, m)) > best.size) best = { j, m, size: Math.abs(rho(j, m)) }
      }
    }
    if (best.size === 0) return 0
    const square = (rho(i, best.j) * rho(i, best.m)) / rho(best.j, best.m)
    return Math.sqrt(Math.max(0, square)) * (i > 0 && rho(0, i) < 0 ? -1 : 1)
  })
  const fits = correlation.every((row, i) =>
    row.every((value, j) => i === j || Math.abs(value - loadings[i]! * loadings[j]!) <= TOLERANCE),
  )
  return fits && loadings.every((l) => Math.abs(l) <= LARGEST) ? loadings : null
}
