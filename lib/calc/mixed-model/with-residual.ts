import type { WeightedProducts } from './types'

/**
 * The products with the residual (G = I) as a last variance: since V⁻¹ = V⁻¹VV⁻¹, each of its products follows from
 * the others, V⁻¹V⁻¹ = V⁻¹ − Σ θₖ V⁻¹GₖV⁻¹.
 * @param products from weightedProducts at these ratios; @param n number of rows
 */
export function withResidual(products: WeightedProducts, ratios: readonly number[], n: number): WeightedProducts {
  const m = ratios.length
  const less = (from: number[][], parts: readonly number[][][]) =>
    from.map((row, i) => row.map((value, j) => parts.reduce((sum, part, k) => sum - ratios[k]! * part[i]![j]!, value)))
  const lessTrace = (from: number, parts: readonly number[]) =>
    parts.reduce((sum, part, k) => sum - ratios[k]! * part, from)

  const residual = less(products.whole, products.first)
  const mixed = products.first.map((own, k) => less(own, products.second[k]!))
  const trace = lessTrace(n, products.traces)
  const mixedTraces = products.traces.map((own, k) => lessTrace(own, products.doubleTraces[k]!))
  return {
    ...products,
    first: [...products.first, residual],
    second: [...products.second.map((row, k) => [...row, mixed[k]!]), [...mixed, less(residual, mixed)]],
    traces: [...products.traces, trace],
    doubleTraces: [
      ...products.doubleTraces.map((row, k) => [...row, mixedTraces[k]!]),
      [...mixedTraces, lessTrace(trace, mixedTraces.slice(0, m))],
    ],
  }
}
