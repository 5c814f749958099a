import { fTail } from '../distributions/f-tail'
import type { FTest } from '../comparison/types'
import type { CurveFit, DoseGroups } from './types'

/**
 * Does the curve miss the means by dose by more than values at one dose differ?
 * @returns null where no dose was baked twice, no dose is left over, or values at one dose never differ
 * Source: Draper & Smith (1998), Applied Regression Analysis, section 2.1.
 */
export function lackOfFit(data: DoseGroups, fit: CurveFit): FTest | null {
  const df2 = data.pureError.df
  const df1 = fit.residualDf - df2
  const pure = data.pureError.sumSquares / df2
  // next to nothing beside the residual is rounding
  if (df1 < 1 || df2 < 1 || data.pureError.sumSquares <= 1e-20 * fit.residualSumSquares) return null
  const f = fit.lackSumSquares / df1 / pure
  return { f, df1, df2, p: fTail({ f, df1, df2, tail: 'upper' }) }
}
