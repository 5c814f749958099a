import type { CurveModel } from './types'

export type CurvePoint = {
  response: number
  /** Of the response by each estimate. */
  gradient: number[]
  /** Change of the response with the dose, and its own change by each estimate and with the dose. */
  slope: number
  slopeGradient: number[]
  bend: number
}

/**
 * A curve at a dose, with the derivatives that intervals need.
 * @param estimates as in CurveFit: intercept, linear, quadratic, or e0, emax, ed50 > 0; @param dose ≥ 0
 * Source: calculus.
 * @example curveAt({ model: 'saturating', estimates: [0, 10, 2] }, 2).response // 5
 */
export function curveAt(curve: { model: CurveModel; estimates: readonly number[] }, dose: number): CurvePoint {
  const [a, b, c = 0] = curve.estimates as [number, number, number?]
  if (curve.model === 'saturating') {
    const whole = c + dose
    const h = dose / whole
    return {
      response: a + b * h,
      gradient: [1, h, (-b * h) / whole],
      slope: (b * c) / whole / whole,
      slopeGradient: [0, c / whole / whole, (b * (dose - c)) / whole / whole / whole],
      bend: (-2 * b * c) / whole / whole / whole,
    }
  }
  const used = curve.estimates.length
  return {
    response: a + b * dose + c * dose * dose,
    gradient: [1, dose, dose * dose].slice(0, used),
    slope: b + 2 * c * dose,
    slopeGradient: [0, 1, 2 * dose].slice(0, used),
    bend: 2 * c,
  }
}
