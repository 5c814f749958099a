/** One experimental unit: its dose, in any unit, and the value it gave. */
export type DoseRow = { dose: number; y: number }

/**
 * `linear` a + b d; `quadratic` a + b d + c d²; `saturating` e0 + emax d / (ed50 + d), whose ed50 is the dose of half
 * the effect and whose e0 may be given.
 */
export type CurveModel = 'linear' | 'quadratic' | 'saturating'

export type CurveQuestion = { rows: readonly DoseRow[]; model: CurveModel; fixedE0?: number; confidence: number }

export type DoseGroup = {
  dose: number
  count: number
  /** Mean of its values less the common origin. */
  offset: number
}

export type DoseGroups = {
  /** By dose, ascending. */
  groups: DoseGroup[]
  origin: number
  count: number
  largest: number
  /** Spread of values at one and the same dose. */
  pureError: { sumSquares: number; df: number }
}

export type CurveFit = {
  model: CurveModel
  names: string[]
  estimates: number[]
  /** Of the estimates; zero for an e0 that was given. */
  covariance: number[][]
  /** Of the means by dose about the curve. */
  lackSumSquares: number
  residualSumSquares: number
  residualDf: number
  residualSd: number
}

/** Why a saturating curve is not claimed. */
export type NoClaim = 'no-zero-dose' | 'fewer-than-three-doses' | 'interval-not-bounded'
