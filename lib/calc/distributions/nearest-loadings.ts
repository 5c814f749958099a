/** So far from 1 that the exact integral over the product stays cheap. */
const LARGEST = 0.95
const SWEEPS = 40

/**
 * Loadings lᵢ whose products lᵢ lⱼ come near a correlation: one common factor by least squares off the diagonal, one
 * loading at a time. Exact where the correlation is such a product with loadings up to 0.95.
 * @param correlation k × k, symmetrical, 1 on the diagonal, k ≥ 2
 * @returns k loadings, −0.95 to 0.95
 * Source: Harman & Jones (1966), "Factor analysis by minimizing residuals (minres)", Psychometrika 31.
 */
export function nearestLoadings(correlation: readonly (readonly number[])[]): number[] {
  const within = (value: number) => Math.min(LARGEST, Math.max(-LARGEST, value))
  const loadings = correlation[0]!.map((value, i) =>
    within((i > 0 && value < 0 ? -1 : 1) * Math.sqrt(Math.max(0.01, meanSize(correlation[i]!)))),
  )
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    correlation.forEach((row, i) => {
      let [top, bottom] = [0, 0]
      row.forEach((value, j) => {
        if (j === i) return
        top += value * loadings[j]!
        bottom += loadings[j]! ** 2
      })
      if (bottom > 0) loadings[i] = within(top / bottom)
    })
  }
  return loadings
}

/** Mean size of the correlations with the others. */
function meanSize(row: readonly number[]): number {
  return (row.reduce((sum, value) => sum + Math.abs(value), 0) - 1) / (row.length - 1)
}
