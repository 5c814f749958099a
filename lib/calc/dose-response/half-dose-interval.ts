import { bracketedRoot } from '../distributions/bracketed-root'
import { tQuantile } from '../distributions/t-quantile'
import { halfDoseGrid } from './half-dose-grid'
import { saturatingProfile } from './saturating-profile'
import type { CurveFit, DoseGroups } from './types'

/**
 * Interval of the dose of half the effect: all whose best curve fits no worse than F on 1 and the residual df allows.
 * @param fit a saturating fit of these data; @param fixedE0 as in the fit; @param confidence 0.5 to 0.9999
 * @returns low 0 where even a step at the lowest dose would do; high null where a straight line would, so that the
 * interval has no end
 * @throws CalcError as tQuantile
 * Source: Bates & Watts (1988), Nonlinear Regression Analysis and Its Applications, section 6.1 (profile t).
 */
export function halfDoseInterval(
  data: DoseGroups,
  fit: CurveFit,
  q: { fixedE0?: number; confidence: number },
): { low: number; high: number | null } {
  const e0 = q.fixedE0 === undefined ? null : q.fixedE0 - data.origin
  const t = tQuantile({ p: (1 - q.confidence) / 2, df: fit.residualDf, tail: 'upper' })
  const allowed = fit.lackSumSquares + t * t * fit.residualSd ** 2
  const over = (log: number) => saturatingProfile(data, Math.exp(log), e0).lackSumSquares - allowed
  const best = Math.log(fit.estimates[2]!)
  const grid = halfDoseGrid(data)
  const limit = (outwards: readonly number[]): number | null => {
    const outside = outwards.findIndex((log) => over(log) > 0)
    if (outside < 0) return null
    return Math.exp(
      bracketedRoot({
        f: over,
        low: outside === 0 ? best : outwards[outside - 1]!,
        high: outwards[outside]!,
        tolerance: 1e-12,
      }),
    )
  }
  const straight = saturatingProfile(data, Infinity, e0).lackSumSquares
  return {
    low: limit(grid.filter((log) => log < best).reverse()) ?? 0,
    high: straight <= allowed ? null : limit(grid.filter((log) => log > best)),
  }
}
