import { mustBeReading, mustBeWithin } from '../checks'
import { CalcError } from '../error'
import { doseGroups } from './dose-groups'
import { fitPolynomial } from './fit-polynomial'
import { fitSaturating } from './fit-saturating'
import { halfDoseInterval } from './half-dose-interval'
import type { CurveFit, CurveQuestion, DoseGroups, NoClaim } from './types'

export type EstimatedCurve = {
  data: DoseGroups
  fit: CurveFit
  /** Of the dose of half the effect; null for other curves. */
  halfDose: { low: number; high: number | null } | null
  /** Why the curve is not claimed; empty where it is. */
  notClaimed: NoClaim[]
}

/**
 * A curve of dose and value with what can be claimed of it. A saturating curve is claimed only from dough without the
 * ingredient, three doses of it, and an interval of the dose of half the effect that has an end.
 * @param fixedE0 with the saturating curve only
 * @throws CalcError as doseGroups, fitPolynomial and fitSaturating; 'wrong-shape' with reason 'only-for-saturating'
 * Source: fits as in their own files; what may be claimed: common practice, no source.
 */
export function estimateCurve(q: CurveQuestion): EstimatedCurve {
  mustBeWithin('confidence', q.confidence, { min: 0.5, max: 0.9999 })
  const data = doseGroups(q.rows)
  if (q.model !== 'saturating') {
    if (q.fixedE0 !== undefined)
      throw new CalcError('wrong-shape', { field: 'fixedE0', value: q.fixedE0, reason: 'only-for-saturating' })
    return { data, fit: fitPolynomial(data, q.model), halfDose: null, notClaimed: [] }
  }
  if (q.fixedE0 !== undefined) mustBeReading('fixedE0', q.fixedE0)
  const fit = fitSaturating(data, q.fixedE0)
  const halfDose = halfDoseInterval(data, fit, q)
  const notClaimed: NoClaim[] = []
  if (data.groups[0]!.dose > 0) notClaimed.push('no-zero-dose')
  if (data.groups.filter(({ dose }) => dose > 0).length < 3) notClaimed.push('fewer-than-three-doses')
  if (halfDose.high === null) notClaimed.push('interval-not-bounded')
  return { data, fit, halfDose, notClaimed }
}
