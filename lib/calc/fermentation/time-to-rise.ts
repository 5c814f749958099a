import { mustBeWithin } from '../checks'
import { tQuantile } from '../distributions/t-quantile'
import { CalcError } from '../error'
import { fitRise, type RiseReading } from './fit-rise'
import { riseAt, type RiseCurveKind } from './rise-curve'

export type TimeToRise = {
  atMin: number
  standardErrorMin: number
  /** Student's t on the fit's degrees of freedom; the lower end may lie before the first reading. */
  lowerMin: number
  upperMin: number
  residualDf: number
  warnings: ('end-not-seen' | 'beyond-readings')[]
}

/**
 * Time at which a dough reaches a rise, from its readings, with an interval for that dough's curve: the fitted sigmoid
 * solved for time, its error to first order (delta method). It tells nothing of how other doughs differ.
 * @param readings, kind as fitRise
 * @param targetRisePct > 0, below the fitted end
 * @param confidenceShare 0.5 to 0.999
 * @throws CalcError as fitRise; 'not-possible' with reason 'target-not-reached' when the curve ends below the target
 * Source: curve as riseAt; delta method: G. W. Oehlert (1992), The American Statistician 46: 27–29.
 */
export function timeToRise(q: {
  readings: readonly RiseReading[]
  kind: RiseCurveKind
  targetRisePct: number
  confidenceShare: number
}): TimeToRise {
  mustBeWithin('targetRisePct', q.targetRisePct, { over: 0 })
  mustBeWithin('confidenceShare', q.confidenceShare, { min: 0.5, max: 0.999 })
  const fit = fitRise(q)
  if (q.targetRisePct >= fit.mostRisePct) {
    throw new CalcError('not-possible', {
      field: 'targetRisePct',
      value: q.targetRisePct,
      max: fit.mostRisePct,
      reason: 'target-not-reached',
    })
  }
  const share = q.targetRisePct / fit.mostRisePct
  const before =
    q.kind === 'gompertz' ? (Math.log(-Math.log(share)) - 1) / Math.E : (Math.log((1 - share) / share) - 2) / 4
  const atMin = fit.lagMin - (before * fit.mostRisePct) / fit.steepestPctPerMin
  const { gradient } = riseAt({ ...fit, kind: q.kind, atMin })
  // The slope against time is that against the lag, negated; so dt/dθ is the slope against θ over that against the lag.
  const slopes = gradient.map((value) => value / gradient[2])
  const variance = slopes.reduce(
    (sum, a, i) => sum + a * slopes.reduce((inner, b, j) => inner + b * fit.covariance[i]![j]!, 0),
    0,
  )
  const standardErrorMin = mustBeWithin('standardErrorMin', Math.sqrt(variance))
  const half = standardErrorMin * tQuantile({ p: (1 - q.confidenceShare) / 2, df: fit.residualDf, tail: 'upper' })
  const lastMin = q.readings.reduce((last, reading) => Math.max(last, reading.atMin), -Infinity)
  return {
    atMin,
    standardErrorMin,
    lowerMin: atMin - half,
    upperMin: atMin + half,
    residualDf: fit.residualDf,
    warnings: [...fit.warnings, ...(atMin > lastMin ? (['beyond-readings'] as const) : [])],
  }
}
