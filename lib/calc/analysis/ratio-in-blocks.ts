import { mustBeWithin } from '../checks'
import { tQuantile } from '../distributions/t-quantile'
import { type DoughRow, countArmDays } from './count-arm-days'
import { type ArmDayFit, fitArmDays } from './fit-arm-days'

/** At or below this share of the largest arm-day mean the control's mean is rounding, and 0. */
const LEAST_MEAN = 1e-14

/** What the ratios that agree with the figures are: an interval, all but what lies between two, or any at all. */
export type RatioSet = 'interval' | 'outside' | 'everything'

export type RatioInBlocks = {
  arm: string
  controlMean: number
  armMean: number
  /** Variances and covariance of both means; null without error. */
  controlVariance: number | null
  armVariance: number | null
  covariance: number | null
  /** Null where the control's mean is 0. */
  ratio: number | null
  /** Fieller's g, t² var(control mean) / control mean²; there are limits below 1 only. */
  g: number | null
  low: number | null
  high: number | null
  set: RatioSet | null
}

/**
 * Plain ratios of means to the control's, by Fieller's theorem on the adjusted means of the arm-day model, with their
 * covariance. Not adjusted for several arms. Where the control's mean is not clear of zero there are no limits.
 * @param rows a row a dough, without `y` when it was lost; @param arms the control first, two or more
 * @param confidence of each interval, 0.5 to 0.9999
 * @throws CalcError as countArmDays and fitArmDays
 * Source: Fieller (1954), "Some problems in interval estimation", JRSS B 16.
 */
export function ratioInBlocks(q: { rows: readonly DoughRow[]; arms: readonly string[]; confidence: number }): {
  df: number
  t: number | null
  noInterval: ArmDayFit['noInterval']
  comparisons: RatioInBlocks[]
} {
  const confidence = mustBeWithin('confidence', q.confidence, { min: 0.5, max: 0.9999 })
  const counted = countArmDays(q)
  const fit = fitArmDays(counted, { unit: 'arm-days' })
  const { meanSquare, noInterval, df } = fit
  const t = noInterval ? null : tQuantile({ p: (1 - confidence) / 2, df, tail: 'upper' })
  const largest = counted.cells.reduce((most, { mean }) => Math.max(most, Math.abs(mean)), 0)
  const [first, ...armMeans] = fit.means
  const controlMean = Math.abs(first!) <= LEAST_MEAN * largest ? 0 : first!
  const covariance = (i: number, j: number) => meanSquare! * fit.meanCovariance[i]![j]!
  const comparisons = armMeans.map((armMean, i): RatioInBlocks => {
    const means = { arm: counted.arms[i + 1]!, controlMean, armMean }
    const ratio = controlMean === 0 ? null : armMean / controlMean
    if (t === null) return { ...means, ...NO_LIMITS, ratio }
    const v = { control: covariance(0, 0), arm: covariance(i + 1, i + 1), both: covariance(0, i + 1) }
    return {
      ...means,
      controlVariance: v.control,
      armVariance: v.arm,
      covariance: v.both,
      ratio,
      ...fieller({ x: controlMean, y: armMean, v, t }),
    }
  })
  return { df, t, noInterval, comparisons }
}

const NO_LIMITS = {
  controlVariance: null,
  armVariance: null,
  covariance: null,
  g: null,
  low: null,
  high: null,
  set: null,
}

/** The ratios r with (y − r x)² ≤ t² (v_arm − 2 r v_both + r² v_control). */
function fieller(q: {
  x: number
  y: number
  v: { control: number; arm: number; both: number }
  t: number
}): Pick<RatioInBlocks, 'g' | 'low' | 'high' | 'set'> {
  const { x, y, v } = q
  const t2 = q.t * q.t
  const g = x === 0 ? null : (t2 * v.control) / (x * x)
  // of A r² − 2 B r + C ≤ 0, with B² − A C worked out beforehand, so that no digits are lost in it
  const b = x * y - t2 * v.both
  const root =
    t2 * (x * x * v.arm - 2 * x * y * v.both + y * y * v.control + t2 * (v.both * v.both - v.control * v.arm))
  if (g === null || g >= 1) return { g, low: null, high: null, set: root >= 0 ? 'outside' : 'everything' }
  const a = x * x * (1 - g)
  const half = Math.sqrt(Math.max(0, root))
  return { g, low: (b - half) / a, high: (b + half) / a, set: 'interval' }
}
