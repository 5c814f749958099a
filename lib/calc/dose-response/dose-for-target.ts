import { mustBeReading } from '../checks'
import { type Interval, meanInterval } from '../comparison/mean-interval'
import { tQuantile } from '../distributions/t-quantile'
import { CalcError } from '../error'
import { curveAt } from './curve-at'
import { deltaSe } from './delta-se'
import { estimateCurve } from './estimate-curve'
import type { CurveFit, CurveQuestion, NoClaim } from './types'

export type DoseForTarget = {
  method: 'delta'
  dose: number
  confidence: number
  /** Fieller's limits, for the straight line; null for other curves and where they have no end. */
  fiellerLow: number | null
  fiellerHigh: number | null
  claimed: boolean
  notClaimed: NoClaim[]
} & Interval

/**
 * The dose whose mean value is the target, with its interval, by the curve fitted to a ladder of doses; on a quadratic
 * curve the dose before its turn. Never beyond the doses that were baked.
 * @param targetResponse in the measure's own unit; the rest as in fitCurve
 * @throws CalcError as fitCurve; 'not-possible' with reason 'target-out-of-reach', or 'beyond-tested-doses' and the dose
 * Source: Draper & Smith (1998), Applied Regression Analysis, section 3.2 (inverse regression); Fieller (1954), JRSS B 16.
 */
export function doseForTarget(q: CurveQuestion & { targetResponse: number }): DoseForTarget {
  const target = mustBeReading('targetResponse', q.targetResponse)
  const { data, fit, notClaimed } = estimateCurve(q)
  const dose = doseAt(fit, target)
  if (dose === null)
    throw new CalcError('not-possible', { field: 'targetResponse', value: target, reason: 'target-out-of-reach' })
  const [min, max] = [data.groups[0]!.dose, data.groups.at(-1)!.dose]
  if (dose < min || dose > max)
    throw new CalcError('not-possible', {
      field: 'targetResponse',
      value: dose,
      min,
      max,
      reason: 'beyond-tested-doses',
    })
  const { gradient, slope } = curveAt(fit, dose)
  const se = deltaSe(
    gradient.map((value) => value / slope),
    fit.covariance,
  )
  const [fiellerLow, fiellerHigh] = (fit.model === 'linear' ? fieller(fit, target, q.confidence) : null) ?? [null, null]
  return {
    method: 'delta',
    dose,
    ...meanInterval({ estimate: dose, se, df: fit.residualDf, confidence: q.confidence }),
    confidence: q.confidence,
    fiellerLow,
    fiellerHigh,
    claimed: notClaimed.length === 0,
    notClaimed,
  }
}

/** Null where no dose, or only the turn of the curve itself, gives the target. */
function doseAt({ model, estimates }: CurveFit, target: number): number | null {
  const [a, b, c = 0] = estimates as [number, number, number?]
  const rise = target - a
  if (model === 'saturating') {
    const share = rise / b
    return share >= 0 && share < 1 ? (c * share) / (1 - share) : null
  }
  const root = b * b + 4 * c * rise
  if (root <= 0) return null
  // the root that goes over into rise / b when the curve is straight; stable for any c
  return (2 * rise) / (b + (b < 0 ? -1 : 1) * Math.sqrt(root))
}

/** Doses at which the target is no farther from the line than its interval; null where they have no end. */
function fieller(
  { estimates, covariance, residualDf }: CurveFit,
  target: number,
  confidence: number,
): [number, number] | null {
  const [a, b] = estimates as [number, number]
  const square = tQuantile({ p: (1 - confidence) / 2, df: residualDf, tail: 'upper' }) ** 2
  const lead = b * b - square * covariance[1]![1]!
  if (lead <= 0) return null
  const middle = b * (target - a) + square * covariance[0]![1]!
  const last = (target - a) ** 2 - square * covariance[0]![0]!
  const half = Math.sqrt(Math.max(0, middle * middle - lead * last))
  return [(middle - half) / lead, (middle + half) / lead]
}
