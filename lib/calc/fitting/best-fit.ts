import { CalcError } from '../error'
import type { CurveFit } from './fit-curve'

/**
 * The best of fits of one curve from several starts: the one with the least residual sum of squares. A start from which
 * none comes about is passed over.
 * @param fits one or more, each a fit from a start of its own
 * @throws CalcError what the last of them refused, when none came about
 */
export function bestFit(fits: readonly (() => CurveFit)[]): CurveFit {
  let best: CurveFit | undefined
  let refusal: unknown
  for (const fitFrom of fits) {
    try {
      const fit = fitFrom()
      if (best === undefined || fit.residualSumSquares < best.residualSumSquares) best = fit
    } catch (error) {
      if (!(error instanceof CalcError)) throw error
      refusal = error
    }
  }
  if (best === undefined) throw refusal
  return best
}
