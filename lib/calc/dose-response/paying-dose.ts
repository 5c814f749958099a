import { type Interval, meanInterval } from '../comparison/mean-interval'
import { mustBeDecimal } from '../cost/must-be-decimal'
import { CalcError } from '../error'
import { curveAt } from './curve-at'
import { deltaSe } from './delta-se'
import { estimateCurve } from './estimate-curve'
import type { CurveQuestion, NoClaim } from './types'

export type PayingDose = {
  method: 'delta'
  /**
   * `dose`: beyond it more does not pay. `nothing-pays`: not even the first of it. `pays-as-far-as-baked`: the last of
   * it still does. `undecided`: the interval of what a little more brings reaches to both sides of what it costs.
   * `no-curve-claimed`: for the reasons given.
   */
  outcome: 'dose' | 'nothing-pays' | 'pays-as-far-as-baked' | 'undecided' | 'no-curve-claimed'
  /** Null but for the outcome `dose`. */
  dose: ({ estimate: number } & Interval) | null
  /** What one more unit of dose must bring, in the measure's unit and in its good direction. */
  neededGainPerDose: number
  /** What it brings by the curve: at the dose, or at the end that decided; null where no curve is claimed. */
  gainPerDose: ({ estimate: number } & Interval) | null
  confidence: number
  notClaimed: NoClaim[]
}

/**
 * The dose beyond which more of an ingredient does not pay: where one more unit of dose brings as much as it costs.
 * @param doseUnitPriceMinor price of one unit of dose, in minor units of money, decimal text ≥ 0, for the same dough
 * that the values come from; @param gainUnitWorthMinor what one unit of the measure more is worth, the same way;
 * negative where less is better; not 0. The rest as in fitCurve
 * @throws CalcError as fitCurve and mustBeDecimal; 'out-of-range' when a unit of gain is worth nothing
 * Source: marginal cost equals marginal revenue; Heady & Dillon (1961), Agricultural Production Functions, chapter 2.
 */
export function payingDose(q: CurveQuestion & { doseUnitPriceMinor: string; gainUnitWorthMinor: string }): PayingDose {
  const price = mustBeDecimal('doseUnitPriceMinor', q.doseUnitPriceMinor)
  const worth = mustBeDecimal('gainUnitWorthMinor', q.gainUnitWorthMinor, -Infinity)
  if (worth.isZero())
    throw new CalcError('out-of-range', {
      field: 'gainUnitWorthMinor',
      value: q.gainUnitWorthMinor,
      reason: 'worth-nothing',
    })
  const needed = price.dividedBy(worth.abs()).toNumber()
  const good = worth.isNegative() ? -1 : 1
  const { data, fit, notClaimed } = estimateCurve(q)
  const base = { method: 'delta' as const, neededGainPerDose: needed, confidence: q.confidence, notClaimed }
  if (notClaimed.length > 0) return { ...base, outcome: 'no-curve-claimed', dose: null, gainPerDose: null }

  const intervalOf = (estimate: number, gradient: readonly number[]) => ({
    estimate,
    ...meanInterval({ estimate, se: deltaSe(gradient, fit.covariance), df: fit.residualDf, confidence: q.confidence }),
  })
  const gainAt = (dose: number) => {
    const { slope, slopeGradient } = curveAt(fit, dose)
    return intervalOf(good * slope, slopeGradient)
  }
  const [first, last] = [data.groups[0]!.dose, data.groups.at(-1)!.dose]
  const [fromStart, atEnd] = [gainAt(first), gainAt(last)]
  if (fromStart.estimate > needed && atEnd.estimate < needed) {
    const estimate = doseOfSlope(fit, good * needed)
    const { slopeGradient, bend } = curveAt(fit, estimate)
    const dose = intervalOf(
      estimate,
      slopeGradient.map((value) => value / bend),
    )
    return { ...base, outcome: 'dose', dose, gainPerDose: gainAt(estimate) }
  }
  // A curve that gains more the more there is has no such dose: the whole way counts. Otherwise the nearer end does.
  const ever = fromStart.estimate < atEnd.estimate ? wholeWay() : fromStart.estimate <= needed ? fromStart : atEnd
  const outcome = ever.low >= needed ? 'pays-as-far-as-baked' : ever.high <= needed ? 'nothing-pays' : 'undecided'
  return { ...base, outcome, dose: null, gainPerDose: ever }

  function wholeWay() {
    const [from, to] = [curveAt(fit, first), curveAt(fit, last)]
    const perDose = (end: number, start: number) => (end - start) / (last - first)
    return intervalOf(
      good * perDose(to.response, from.response),
      to.gradient.map((value, i) => perDose(value, from.gradient[i]!)),
    )
  }
}

/** Where a quadratic or saturating curve has this slope. */
function doseOfSlope({ model, estimates }: { model: string; estimates: readonly number[] }, slope: number): number {
  const [, b, c] = estimates as [number, number, number]
  return model === 'saturating' ? Math.sqrt((b * c) / slope) - c : (slope - b) / (2 * c)
}
