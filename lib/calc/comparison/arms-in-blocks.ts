import { mustBeReading, mustHaveAtLeast } from '../checks'
import { type AdditiveFit, type AnovaRow, type ArmMean, fitAdditive } from '../analysis/fit-additive'
import { cvPct } from './cv-pct'
import { type Interval, meanInterval } from './mean-interval'

export type ArmsInBlocks = {
  method: AdditiveFit['method']['model']
  count: number
  /** Block before arm, arm after block, residual; then block after arm, as 'block-after-arm'. */
  anova: AnovaRow[]
  residualSd: number
  residualDf: number
  /** 100 × residual SD / mean of all values; null where that mean is not well above zero. */
  cvPct: number | null
  confidence: number
  /** Averaged over blocks with equal weight. */
  arms: ArmMean[]
  /** Arm minus control; intervals and two-sided p each by itself, not adjusted for several arms. */
  differences: ({ arm: string; estimate: number; t: number; p: number } & Interval)[]
}

/**
 * Arms in blocks: effects of arm and block add up; cells may be missing or repeated. Without blocks, of arm alone.
 * @param rows one per experimental unit; `block` on all or on none; leave a missing cell out
 * @param control the arm that others are compared with; @param confidence 0.5 to 0.9999
 * @throws CalcError 'empty' | 'not-finite' | 'out-of-range', and as fitAdditive
 * Source: Cochran & Cox (1957), Experimental Designs, chapter 4; Searle (1971), Linear Models, chapter 7.
 */
export function armsInBlocks(q: {
  rows: readonly { arm: string; block?: string; y: number }[]
  control: string
  confidence: number
}): ArmsInBlocks {
  mustHaveAtLeast('rows', q.rows, 1)
  q.rows.forEach(({ y }, i) => mustBeReading(`rows[${i}].y`, y))
  const arms = [...new Set([q.control, ...q.rows.map((row) => row.arm)])]
  const fit = fitAdditive({ rows: q.rows, arms, confidence: q.confidence })
  const mean = q.rows.reduce((sum, { y }) => sum + y, 0) / fit.n
  return {
    method: fit.method.model,
    count: fit.n,
    anova: [...fit.anova, ...(fit.blockAfterArm ? [{ ...fit.blockAfterArm, source: 'block-after-arm' }] : [])],
    residualSd: fit.residualSd,
    residualDf: fit.residualDf,
    cvPct: cvPct(fit.residualSd, mean),
    confidence: q.confidence,
    arms: fit.armMeans,
    differences: fit.differences.map((difference) => ({
      ...difference,
      ...meanInterval({ ...difference, confidence: q.confidence }),
    })),
  }
}
