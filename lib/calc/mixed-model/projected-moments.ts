import { matrixProduct } from './matrix-product'
import { quadraticForm } from './quadratic-form'
import { spdInverse } from './spd-inverse'
import { traceOfProduct } from './trace-of-product'
import type { ProjectedMoments, WeightedProducts } from './types'

/**
 * Generalised least squares, and the moments of its residuals and of their projection P.
 * @param products of weightedProducts, with or without the residual; @param p leading columns to fit; all where not given
 * @throws CalcError 'not-possible' with reason 'not-definite' (the fixed part is not of full rank)
 * Source: Searle, Casella & McCulloch (1992), Variance Components, section 6.6.
 */
export function projectedMoments(products: WeightedProducts, p: number = products.p): ProjectedMoments {
  const fixed = (matrix: number[][]) => matrix.slice(0, p).map((row) => row.slice(0, p))
  const { inverse, logDet } = spdInverse(fixed(products.whole))
  const last = products.p
  const crossed = products.whole.slice(0, p).map((row) => row[last]!)
  const coefficients = inverse.map((row) => row.reduce((sum, value, j) => sum + value * crossed[j]!, 0))
  // U · remainder is y less its fit
  const remainder = [...coefficients.map((value) => -value), ...new Array<number>(last - p).fill(0), 1]
  const form = (matrix: number[][]) => quadraticForm(remainder, matrix, remainder)

  const leftOver = products.first.map((matrix) =>
    matrix.slice(0, p).map((row) => row.reduce((sum, value, j) => sum + value * remainder[j]!, 0)),
  )
  const turned = products.first.map((matrix) => matrixProduct(inverse, fixed(matrix)))
  return {
    inverse,
    logDetX: logDet,
    coefficients,
    residual: form(products.whole),
    first: products.first.map(form),
    second: products.second.map((row, k) =>
      row.map((matrix, l) => form(matrix) - quadraticForm(leftOver[k]!, inverse, leftOver[l]!)),
    ),
    traces: products.traces.map((trace, k) => trace - turned[k]!.reduce((sum, row, i) => sum + row[i]!, 0)),
    doubleTraces: products.doubleTraces.map((row, k) =>
      row.map(
        (trace, l) =>
          trace - 2 * traceOfProduct(inverse, fixed(products.second[k]![l]!)) + traceOfProduct(turned[k]!, turned[l]!),
      ),
    ),
  }
}
