import { mustBeWithin } from '../checks'
import { dunnettLoadings } from '../distributions/dunnett-loadings'
import { type Alternative, type Comparisons, adjustAgainstControl } from './adjust-against-control'
import { type CountedArmDays, type DoughRow, countArmDays } from './count-arm-days'
import { type ArmDayFit, type ErrorUnit, fitArmDays } from './fit-arm-days'
import { type GoodDirection, gainVerdict } from './gain-verdict'
import { noWorseVerdict } from './no-worse-verdict'
import { type OwnDayInterval, ownDayInterval } from './own-day-interval'
import { sameAsVerdict } from './same-as-verdict'

/** *Gain* rests on two-sided limits, the others on one-sided ones, each at the confidence. */
export type ArmDayQuestion = 'gain' | 'no-worse' | 'same'

export type ArmDayVerdict =
  | NonNullable<ReturnType<typeof gainVerdict>>['verdict']
  /** Better, but its own mixing days alone do not show it. */
  | 'better-on-pooled-error-only'
  | ReturnType<typeof noWorseVerdict>
  | ReturnType<typeof sameAsVerdict>

export type JudgedArm = {
  arm: string
  /** Arm minus control. */
  estimate: number
  se: number | null
  /** Distance in standard errors: from zero for a gain, else from the margin, the nearer of two. */
  t: number | null
  /** Simultaneous limits; for *no worse* the one that the question asks for alone. */
  low: number | null
  high: number | null
  /** For *no worse* the one-sided limit on the good side, below which 'worse' is said. */
  otherLimit: number | null
  /** Adjusted for several arms; for *no worse* and *same* that the margin is reached. */
  pAdjusted: number | null
  /** For *same*: that it is below, and above, by the margin or more. */
  pLower: number | null
  pUpper: number | null
  /** From its own mixing days alone; null where the error is taken from doughs. */
  own: OwnDayInterval | null
  verdict: ArmDayVerdict | null
  /** The whole interval is at or beyond the margin. */
  clearly: boolean
}

export type ArmDayJudgement = {
  days: number
  completeDays: number
  leftOut: string[]
  df: number
  /** For one dough's weight. */
  meanSquare: number | null
  noInterval: ArmDayFit['noInterval']
  /** `doughs` kept on days that count; mean with every such day at equal weight. */
  means: { arm: string; doughs: number; mean: number }[]
  criticalValue: number | null
  adjustment: Comparisons['method'] | null
  /** Largest error estimate of adjusted p and joint level, absolute. */
  probabilityError: number | null
  comparisons: JudgedArm[]
}

/**
 * Arms against the control on arm-day means, by the rule declared before baking: weighted least squares with the doughs
 * kept as weights, Dunnett's adjustment over the arms that are not left out, and verdicts. With no error seen, or no
 * degrees of freedom, there is no interval and no verdict. 'Better' asks that the interval from the arm's own days
 * lies on the good side of zero too; with fewer than two days, or days all alike, it does not.
 * @param rows a row a dough, without `y` when it was lost; @param arms the control first, two or more
 * @param goodDirection null for a measure without one: only *same* gets a verdict then
 * @param margin smallest difference that matters, above (`more`) and below (`less`) the control, both > 0
 * @param confidence joint, 0.5 to 0.9999; of each side where limits are one-sided
 * @param unit what the error is taken from; `doughs` holds for these mixing days only
 * @param correlation of the differences: the model's own, or the product form by doughs kept, which is the same where
 *   every day keeps doughs in the same proportions
 * @param leastSize as in fitArmDays
 * @throws CalcError as countArmDays, fitArmDays and adjustAgainstControl
 * Source: Searle (1971), Linear Models; Dunnett (1955), JASA 50; Schuirmann (1987); the project's declared rule.
 */
export function judgeArmDays(q: {
  rows: readonly DoughRow[]
  arms: readonly string[]
  question: ArmDayQuestion
  goodDirection: GoodDirection | null
  margin: { more: number; less: number }
  confidence: number
  unit: ErrorUnit
  correlation: 'model' | 'numbers-kept'
  leastSize?: number
}): ArmDayJudgement {
  mustBeWithin('confidence', q.confidence, { min: 0.5, max: 0.9999 })
  mustBeWithin('margin', q.margin.more, { over: 0 })
  mustBeWithin('margin', q.margin.less, { over: 0 })
  const counted = countArmDays(q)
  const fit = fitArmDays(counted, q)
  const doughs = counted.arms.map((arm) => doughsOf(counted, arm))
  const judged = fit.meanSquare === null || fit.noInterval ? null : judgedArms({ ...q, counted, fit, doughs })
  const size = counted.cells.reduce((most, { mean }) => Math.max(most, Math.abs(mean)), q.leastSize ?? 0)
  return {
    days: counted.blocks.length,
    completeDays: counted.completeDays,
    leftOut: counted.leftOut,
    df: fit.df,
    meanSquare: fit.meanSquare,
    noInterval: fit.noInterval,
    means: counted.arms.map((arm, i) => ({ arm, doughs: doughs[i]!, mean: fit.means[i]! })),
    criticalValue: judged?.criticalValue ?? null,
    adjustment: judged?.method ?? null,
    probabilityError: judged?.probabilityError ?? null,
    comparisons: counted.arms.slice(1).map((arm, i): JudgedArm => {
      const own =
        q.unit === 'doughs'
          ? null
          : ownDayInterval({ differences: dayDifferences(counted, arm), confidence: q.confidence, size })
      const bare = { arm, estimate: fit.differences[i]!, own }
      const limits = judged?.arms[i]
      if (!limits) return { ...bare, ...NOTHING, verdict: null, clearly: false }
      return { ...bare, ...limits, ...verdictOf(q, { ...bare, ...limits }) }
    }),
  }
}

type Limits = Omit<JudgedArm, 'arm' | 'estimate' | 'own' | 'verdict' | 'clearly'>

const NOTHING: Limits = {
  se: null,
  t: null,
  low: null,
  high: null,
  otherLimit: null,
  pAdjusted: null,
  pLower: null,
  pUpper: null,
}

function judgedArms(
  q: Parameters<typeof judgeArmDays>[0] & { counted: CountedArmDays; fit: ArmDayFit; doughs: readonly number[] },
): Pick<Comparisons, 'method' | 'criticalValue' | 'probabilityError'> & { arms: Limits[] } {
  const { fit } = q
  const covariance = (i: number, j: number) => fit.differenceCovariance[i]![j]!
  const se = fit.differences.map((_, i) => Math.sqrt(fit.meanSquare! * covariance(i, i)))
  const loadings = dunnettLoadings({ controlCount: q.doughs[0]!, armCounts: q.doughs.slice(1) })
  const correlation = se.map((_, i) =>
    se.map((__, j) => {
      if (i === j) return 1
      if (q.correlation === 'numbers-kept') return loadings[i]! * loadings[j]!
      return covariance(i, j) / Math.sqrt(covariance(i, i) * covariance(j, j))
    }),
  )
  // against zero, or against a margin: the limits are put back by as much
  const against = (from: number, alternative: Alternative) =>
    adjustAgainstControl({
      differences: fit.differences.map((estimate, i) => ({
        arm: q.counted.arms[i + 1]!,
        estimate: estimate - from,
        se: se[i]!,
      })),
      correlation,
      df: fit.df,
      confidence: q.confidence,
      alternative,
    })

  if (q.question === 'gain') {
    const two = against(0, 'two-sided')
    return { ...two, arms: two.comparisons.map((one) => ({ ...NOTHING, ...withoutArm(one) })) }
  }
  const [below, above] = [against(-q.margin.less, 'greater'), against(q.margin.more, 'less')]
  const arms = below.comparisons.map((lower, i): Limits => {
    const upper = above.comparisons[i]!
    const [low, high] = [lower.low! - q.margin.less, upper.high! + q.margin.more]
    const both = { ...NOTHING, se: se[i]!, low, high }
    if (q.question === 'same' || q.goodDirection === null) {
      const pAdjusted = Math.max(lower.pAdjusted, upper.pAdjusted)
      const p = q.question === 'same' ? { pAdjusted, pLower: lower.pAdjusted, pUpper: upper.pAdjusted } : {}
      return { ...both, t: Math.min(lower.t, -upper.t), ...p }
    }
    return q.goodDirection === 'larger'
      ? { ...both, t: lower.t, pAdjusted: lower.pAdjusted, high: null, otherLimit: high }
      : { ...both, t: -upper.t, pAdjusted: upper.pAdjusted, low: null, otherLimit: low }
  })
  return { ...below, probabilityError: Math.max(below.probabilityError, above.probabilityError), arms }
}

function withoutArm({ se, t, low, high, pAdjusted }: Comparisons['comparisons'][number]): Partial<Limits> {
  return { se, t, low, high, pAdjusted }
}

function verdictOf(
  q: Pick<Parameters<typeof judgeArmDays>[0], 'question' | 'goodDirection' | 'margin' | 'unit'>,
  arm: { estimate: number; own: OwnDayInterval | null } & Limits,
): Pick<JudgedArm, 'verdict' | 'clearly'> {
  const { estimate } = arm
  const [low, high] = [arm.low ?? arm.otherLimit!, arm.high ?? arm.otherLimit!]
  const { more, less } = q.margin
  if (q.question === 'same')
    return { verdict: sameAsVerdict({ estimate, low, high, margin: more, less }), clearly: false }
  const { goodDirection } = q
  if (goodDirection === null) return { verdict: null, clearly: false }
  const [gain, loss] = goodDirection === 'larger' ? [more, less] : [less, more]
  if (q.question === 'no-worse')
    return { verdict: noWorseVerdict({ estimate, low, high, margin: loss, goodDirection }), clearly: false }
  const found = gainVerdict({ estimate, low, high, worthwhile: gain, loss, goodDirection })!
  const isShownByOwnDays =
    arm.own === null || (goodDirection === 'larger' ? (arm.own.low ?? 0) > 0 : (arm.own.high ?? 0) < 0)
  return found.verdict === 'better' && !isShownByOwnDays
    ? { verdict: 'better-on-pooled-error-only', clearly: false }
    : found
}

function doughsOf({ cells }: CountedArmDays, arm: string): number {
  return cells.reduce((sum, cell) => sum + (cell.arm === arm ? cell.doughs : 0), 0)
}

/** Of each day that counts and has the arm: its mean minus the control's. */
function dayDifferences({ cells, arms, blocks }: CountedArmDays, arm: string): number[] {
  return blocks.flatMap((block) => {
    const ofDay = cells.filter((cell) => cell.block === block)
    const own = ofDay.find((cell) => cell.arm === arm)
    return own ? [own.mean - ofDay.find((cell) => cell.arm === arms[0])!.mean] : []
  })
}
