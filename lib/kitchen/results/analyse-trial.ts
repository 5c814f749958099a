import 'server-only'
import { adjustAgainstControl } from '../../calc/analysis/adjust-against-control'
import { analyseBatches, type BatchAnalysis } from '../../calc/analysis/analyse-batches'
import { frozenMargin } from '../../calc/analysis/frozen-margin'
import type { FTest } from '../../calc/comparison/types'
import { isOutState } from '../conduct/is-out-state'
import { sureOf } from '../sure-of'
import type { Limit } from './codes'
import { conditionsByArm, type Condition } from './conditions-by-arm'
import { countBatches, meanOf, type BatchCount, type CountedBatch } from './count-batches'
import { fTestOf } from './f-test-of'
import { levelEffects, type LevelEffects } from './level-effects'
import { limitOfCalcError } from './limit-of-calc-error'
import { outlierFlags, type OutlierFlag } from './outlier-flags'
import { mayCompare, stageOfTrial, type TrialStage } from './stage-of-trial'
import type { ConditionCode, DeclaredTrial, MeasuredBatch } from './trial-facts'
import { verdictOf, type Verdict } from './verdict-of'

/** Arm less control, in the measure's unit and in % of the control's mean (null unless that is above zero). */
export type Effect = {
  estimate: number
  /** Simultaneous limits for all arms compared; null where there is no interval. */
  low: number | null
  high: number | null
  pct: number | null
  lowPct: number | null
  highPct: number | null
  /** Adjusted for all arms compared, for no difference at all, two-sided. */
  p: number | null
}

export type ArmResult = {
  arm: number
  standing: 'control' | 'compared' | 'look-only' | 'no-batches'
  batches: number
  loaves: number
  /** Mean over mixing days with equal weight where there is a fit, else of the batch means. */
  mean: number | null
  effect: Effect | null
  verdict: Verdict | null
  /** Conditions in which it differed notably from the control. */
  doubts: ConditionCode[]
}

/** A batch against the control of its own mixing day, for the picture. */
export type BatchPoint = { arm: number; batchId: string; mean: number; difference: number; loaves: number[] }

export type Comparison = {
  isIndication: boolean
  arms: ArmResult[]
  controlMean: number | null
  /** The worthwhile difference in units, frozen on the control's mean where it was declared in %. */
  worthwhile: number | null
  method: {
    model: BatchAnalysis['method']['model']
    adjustment: BatchAnalysis['method']['adjustment']
    /** `one-sided-pair`: each limit one-sided at the declared confidence, as 'no worse' and 'same' ask for. */
    limits: 'two-sided' | 'one-sided-pair'
    df: number
    batchSd: number
    armTest: FTest
  } | null
  /** Standard deviation between loaves of one batch, and its degrees of freedom. It informs and decides nothing. */
  loafVariation: { sd: number; df: number } | null
  levels: LevelEffects | null
  conditions: Condition[]
  flags: OutlierFlag[]
  points: BatchPoint[]
}

export type DayProgress = { day: number; measured: number; ended: number; open: number }

export type TrialAnalysis = {
  stage: TrialStage
  planned: { days: number; batches: number }
  days: DayProgress[]
  open: number
  uncounted: BatchCount['uncounted']
  /** Null until the readings are closed. */
  comparison: Comparison | null
  limits: Limit[]
}

/**
 * What a trial showed: which batches count, every arm against the control on batch means with simultaneous intervals,
 * the verdict by the declared rule, what else differed, and what cannot be concluded. Nothing is compared until the
 * readings are closed, and with fewer mixing days than planned it is an indication, however they came to be fewer.
 * Source: the project's declared rules; methods as in lib/calc/analysis.
 */
export function analyseTrial(declared: DeclaredTrial, batches: readonly MeasuredBatch[]): TrialAnalysis {
  const count = countBatches({ factor: declared.factor, batches })
  const stage = stageOfTrial(declared, count)
  const whole = {
    stage,
    planned: {
      days: declared.mixingDays,
      batches: declared.mixingDays * declared.batchesPerArm * declared.arms.length,
    },
    days: progressOf(batches),
    open: count.open,
    uncounted: count.uncounted,
  }
  if (!mayCompare(stage)) return { ...whole, comparison: null, limits: [] }
  const limits: Limit[] = []
  const comparison = compare(
    declared,
    count,
    stage === 'stopped-early' || count.daysCounted.length < declared.mixingDays,
    limits,
  )
  return { ...whole, comparison, limits }
}

function progressOf(batches: readonly MeasuredBatch[]): DayProgress[] {
  const days = [...new Set(batches.map(({ day }) => day))].sort((a, b) => a - b)
  return days.map((day) => {
    const states = batches.filter((batch) => batch.day === day).map(({ state }) => state)
    const measured = states.filter((state) => state === 'measured').length
    const ended = states.filter(isOutState).length
    return { day, measured, ended, open: states.length - measured - ended }
  })
}

function compare(declared: DeclaredTrial, count: BatchCount, isIndication: boolean, limits: Limit[]): Comparison {
  const { counted, daysCounted } = count
  const say = (code: Limit['code'], arm: number | null = null, facts: Limit['facts'] = {}) =>
    limits.push({ code, arm, facts })
  if (declared.state === 'stopped') say('stopped-early')
  if (daysCounted.length < declared.mixingDays)
    say('fewer-days', null, { counted: daysCounted.length, planned: declared.mixingDays })

  const ofArm = (position: number) => counted.filter(({ batch }) => batch.arm === position)
  const comparable = comparableArms(declared, ofArm, daysCounted.length, say)
  const fit = fitOrNull(declared, counted, comparable, say)
  const dayControl = new Map(
    daysCounted.map((day) => [
      day,
      meanOf(
        ofArm(0)
          .filter(({ batch }) => batch.day === day)
          .map(({ mean }) => mean),
      ),
    ]),
  )
  const points = counted.map(({ batch, mean, values }): BatchPoint => {
    const control = sureOf(dayControl.get(batch.day), 'the control of a day that counts')
    return {
      arm: batch.arm,
      batchId: batch.id,
      mean,
      difference: mean - control,
      loaves: values.map((value) => value - control),
    }
  })

  const controlMean =
    fit?.fit.armMeans[0]?.estimate ?? (ofArm(0).length > 0 ? meanOf(ofArm(0).map(({ mean }) => mean)) : null)
  const worthwhile = controlMean === null ? null : marginOrNull(declared, controlMean, say)
  const intervals = fit ? intervalsOf(declared, fit) : new Map<number, Interval>()
  const conditions = conditionsByArm({ arms: declared.arms, batches: counted.map(({ batch }) => batch) })
  if (declared.kind === 'look_only') say('look-only-asked')
  else if (declared.kind !== 'same_as' && declared.measure.direction === 'none') say('no-direction')

  const arms = declared.arms.map(({ position }): ArmResult => {
    const own = ofArm(position)
    const index = comparable.indexOf(position)
    const interval = intervals.get(position) ?? null
    const standing = position === 0 ? 'control' : own.length === 0 ? 'no-batches' : interval ? 'compared' : 'look-only'
    const differences = points.filter(({ arm }) => arm === position).map(({ difference }) => difference)
    const estimate = interval?.estimate ?? (position === 0 || differences.length === 0 ? null : meanOf(differences))
    const effect =
      estimate === null
        ? null
        : asEffect(
            { estimate, low: interval?.low ?? null, high: interval?.high ?? null, p: interval?.p ?? null },
            controlMean,
          )
    return {
      arm: position,
      standing,
      batches: own.length,
      loaves: own.reduce((sum, { values }) => sum + values.length, 0),
      mean:
        (fit && index >= 0 ? fit.fit.armMeans[index]?.estimate : undefined) ??
        (own.length > 0 ? meanOf(own.map(({ mean }) => mean)) : null),
      effect,
      verdict:
        isIndication || worthwhile === null || !interval ? null : verdictOf({ declared, ...interval, worthwhile }),
      doubts: conditions
        .filter(({ arms }) => arms.some((each) => each.arm === position && each.isNotable))
        .map(({ code }) => code),
    }
  })

  const levels =
    declared.factor &&
    levelEffects({
      factor: declared.factor,
      arms: comparable.length > 1 ? comparable : declared.arms.map(({ position }) => position),
      counted,
    })
  if (levels?.limit) say(levels.limit)
  const compared = fit && counted.filter(({ batch }) => comparable.includes(batch.arm))
  return {
    isIndication,
    arms,
    controlMean,
    worthwhile,
    method: fit && methodOf(declared, fit),
    loafVariation:
      !fit || declared.factor || !fit.loafVariation ? null : { sd: fit.loafVariation.sd, df: fit.loafVariation.df },
    levels,
    conditions,
    flags: outlierFlags({
      counted: compared ?? counted,
      residuals: fit?.fit.residuals ?? null,
      hasFactor: declared.factor !== null,
    }),
    points,
  }
}

/** The control and the arms with two batches or more, or none when nothing can be compared; the others are named. */
function comparableArms(
  declared: DeclaredTrial,
  ofArm: (position: number) => CountedBatch[],
  daysCounted: number,
  say: (code: Limit['code'], arm?: number | null, facts?: Limit['facts']) => void,
): number[] {
  const tests = declared.arms.map(({ position }) => position).filter((position) => position > 0)
  const controls = ofArm(0).length
  if (controls === 0) {
    say('no-control')
    return []
  }
  for (const arm of tests) if (ofArm(arm).length === 0) say('arm-without-batches', arm)
  const present = tests.filter((arm) => ofArm(arm).length > 0)
  if (controls === 1) {
    say(present.every((arm) => ofArm(arm).length === 1) ? 'one-batch-per-arm' : 'one-batch-in-control')
    return []
  }
  const comparable = present.filter((arm) => ofArm(arm).length > 1)
  for (const arm of present) if (!comparable.includes(arm)) say('one-batch-in-arm', arm)
  if (daysCounted === 1) say('one-day')
  else
    for (const arm of comparable)
      if (new Set(ofArm(arm).map(({ batch }) => batch.day)).size === 1) say('arm-on-one-day', arm)
  if (comparable.length === 0) {
    say('no-arms-left')
    return []
  }
  return [0, ...comparable]
}

function fitOrNull(
  declared: DeclaredTrial,
  counted: readonly CountedBatch[],
  comparable: readonly number[],
  say: (code: Limit['code']) => void,
): BatchAnalysis | null {
  if (comparable.length === 0) return null
  try {
    const fit = analyseBatches({
      readings: counted
        .filter(({ batch }) => comparable.includes(batch.arm))
        .flatMap(({ batch, values }) =>
          values.map((value, i) => ({
            arm: String(batch.arm),
            block: String(batch.day),
            batch: batch.id,
            loaf: String(i),
            value,
          })),
        ),
      arms: comparable.map(String),
      confidence: declared.confidencePct / 100,
      alternative: 'two-sided',
      scale: 'plain',
    })
    if (fit.warnings.includes('unequal-loaves')) say('unequal-loaves')
    return fit
  } catch (error) {
    say(limitOfCalcError(error))
    return null
  }
}

type Interval = { estimate: number; low: number; high: number; p: number }

/** Which limits the question asks for: 'no worse' and 'same' rest on one-sided ones at the declared confidence. */
function limitsOf(declared: DeclaredTrial): 'two-sided' | 'one-sided-pair' {
  return declared.kind === 'no_worse' || declared.kind === 'same_as' ? 'one-sided-pair' : 'two-sided'
}

/** The difference of each arm compared from the control, by its position. */
function intervalsOf(declared: DeclaredTrial, fit: BatchAnalysis): Map<number, Interval> {
  const twoSided = fit.comparisons.comparisons
  const oneSided = (alternative: 'greater' | 'less') =>
    adjustAgainstControl({
      differences: fit.fit.differences,
      correlation: fit.fit.differenceCorrelation,
      df: fit.fit.residualDf,
      confidence: declared.confidencePct / 100,
      alternative,
    }).comparisons
  const [below, above] =
    limitsOf(declared) === 'two-sided' ? [twoSided, twoSided] : [oneSided('greater'), oneSided('less')]
  const ofArm = (comparisons: typeof twoSided, arm: string) => comparisons.find((each) => each.arm === arm)
  return new Map(
    twoSided.map(({ arm, estimate, pAdjusted }) => [
      Number(arm),
      {
        estimate,
        low: sureOf(ofArm(below, arm)?.low, 'the lower limit of a comparison'),
        high: sureOf(ofArm(above, arm)?.high, 'the upper limit of a comparison'),
        p: pAdjusted,
      },
    ]),
  )
}

function asEffect(
  q: { estimate: number; low: number | null; high: number | null; p: number | null },
  controlMean: number | null,
): Effect {
  const pct = (value: number | null) =>
    value === null || controlMean === null || controlMean <= 0 ? null : (100 * value) / controlMean
  return { ...q, pct: pct(q.estimate), lowPct: pct(q.low), highPct: pct(q.high) }
}

function marginOrNull(
  declared: DeclaredTrial,
  controlLevel: number,
  say: (code: Limit['code']) => void,
): number | null {
  try {
    return frozenMargin(
      declared.marginUnit === 'unit'
        ? { kind: 'units', value: declared.margin }
        : { kind: 'pct-of-control', pct: declared.margin, controlLevel },
    )
  } catch (error) {
    limitOfCalcError(error)
    say('margin-unusable')
    return null
  }
}

function methodOf(declared: DeclaredTrial, { method, fit }: BatchAnalysis): Comparison['method'] {
  const armRow = sureOf(
    fit.anova.find(({ source }) => source === 'arm'),
    'the row of the arms',
  )
  return {
    model: method.model,
    adjustment: method.adjustment,
    limits: limitsOf(declared),
    df: fit.residualDf,
    batchSd: fit.residualSd,
    armTest: fTestOf(armRow, fit.residualDf),
  }
}
