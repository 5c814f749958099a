import { type Interval, meanInterval } from '../comparison/mean-interval'
import type { FTest } from '../comparison/types'
import { deltaSe } from './delta-se'
import { estimateCurve } from './estimate-curve'
import { lackOfFit } from './lack-of-fit'
import type { CurveModel, CurveQuestion, NoClaim } from './types'

export type FittedCurve = {
  method: 'least-squares'
  model: CurveModel
  /**
   * Limits from Student's t; those of ed50 from its profile, and then low may be 0 and high null, without an end.
   */
  parameters: { name: string; estimate: number; se: number; df: number; low: number; high: number | null }[]
  residualSumSquares: number
  residualSd: number
  residualDf: number
  pureErrorSumSquares: number
  pureErrorDf: number
  /** Null where no dose is baked twice or none is left over. */
  lackOfFit: FTest | null
  /** The top or bottom of a quadratic curve, wherever it lies. */
  vertex: ({ kind: 'top' | 'bottom'; dose: number; response: number; withinTested: boolean } & Interval) | null
  confidence: number
  /** False: no curve is claimed, for the reasons given; the numbers only say what was fitted. */
  claimed: boolean
  notClaimed: NoClaim[]
}

/**
 * A curve through a ladder of doses: estimates with standard errors, and whether the curve misses the values.
 * @param rows one per experimental unit; doses ≥ 0 in one unit; linear takes two doses, the others three
 * @param model linear, quadratic or saturating; @param fixedE0 value without any dose, saturating only, where known
 * @param confidence of the intervals, 0.5 to 0.9999
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range' | 'wrong-shape'; 'not-possible' with reason 'few-doses',
 * 'no-residual-df' or 'zero-variance'; 'no-convergence' with reason 'no-bend', 'step' or 'flat'
 * Source: Draper & Smith (1998), Applied Regression Analysis; Bates & Watts (1988), Nonlinear Regression Analysis.
 */
export function fitCurve(q: CurveQuestion): FittedCurve {
  const { data, fit, halfDose, notClaimed } = estimateCurve(q)
  const { estimates, covariance, residualDf: df } = fit
  const { confidence } = q
  const parameters = fit.names.flatMap((name, i) => {
    if (name === 'e0' && q.fixedE0 !== undefined) return []
    const interval = meanInterval({ estimate: estimates[i]!, se: Math.sqrt(covariance[i]![i]!), df, confidence })
    return [{ name, estimate: estimates[i]!, ...interval, ...(name === 'ed50' ? halfDose : {}) }]
  })
  return {
    method: 'least-squares',
    model: fit.model,
    parameters,
    residualSumSquares: fit.residualSumSquares,
    residualSd: fit.residualSd,
    residualDf: df,
    pureErrorSumSquares: data.pureError.sumSquares,
    pureErrorDf: data.pureError.df,
    lackOfFit: lackOfFit(data, fit),
    vertex: vertexOf(),
    confidence,
    claimed: notClaimed.length === 0,
    notClaimed,
  }

  function vertexOf(): FittedCurve['vertex'] {
    const [a, b, c] = estimates as [number, number, number]
    if (fit.model !== 'quadratic' || c === 0) return null
    const dose = -b / (2 * c)
    const se = deltaSe([0, -1 / (2 * c), b / (2 * c * c)], covariance)
    const response = a + (b * dose) / 2
    if (![dose, se, response].every(Number.isFinite)) return null
    const withinTested = dose >= data.groups[0]!.dose && dose <= data.groups.at(-1)!.dose
    return {
      kind: c < 0 ? 'top' : 'bottom',
      dose,
      response,
      withinTested,
      ...meanInterval({ estimate: dose, se, df, confidence }),
    }
  }
}
