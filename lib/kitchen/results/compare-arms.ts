import 'server-only'
import { batchMeans } from '../../calc/analysis/batch-means'
import { loafVariation } from '../../calc/analysis/loaf-variation'
import { hasTrueZero } from '../stores/has-true-zero'
import { sureOf } from '../sure-of'
import type { SayLimit } from './codes'
import { conditionsByArm, type Condition } from './conditions-by-arm'
import { meanOf, type BatchCount, type CountedBatch } from './count-batches'
import { type ArmJudged, type ArmsJudged, type Method, judgeArms } from './judge-arms'
import { levelEffects, type LevelEffects } from './level-effects'
import { limitOfCalcError } from './limit-of-calc-error'
import { outlierFlags, type DoughCheck, type OutlierFlag } from './outlier-flags'
import type { ConditionCode, DeclaredTrial } from './trial-facts'

export type ArmResult = {
  arm: number
  /** `look-only`: a difference without an interval. */
  standing: 'control' | 'compared' | 'look-only' | 'no-batches'
  batches: number
  loaves: number
  /** Over mixing days with equal weight; null without a dough on a day that counts. */
  mean: number | null
  effect: ArmJudged['effect'] | null
  verdict: ArmJudged['verdict']
  lies: ArmJudged['lies']
  /** Conditions in which it differed notably from the control. */
  doubts: ConditionCode[]
}

/** A batch against the control of its own mixing day, for the picture. */
export type BatchPoint = { arm: number; batchId: string; mean: number; difference: number; loaves: number[] }

export type Comparison = {
  isIndication: boolean
  arms: ArmResult[]
  controlMean: number | null
  /** The declared margin, in what it was declared in; null where nothing can be judged by it. */
  worthwhile: number | null
  /** Null where there is no interval. */
  method: Method | null
  /** Standard deviation between loaves of one batch, and its degrees of freedom. It informs and decides nothing. */
  loafVariation: { sd: number; df: number } | null
  levels: LevelEffects | null
  conditions: Condition[]
  flags: OutlierFlag[]
  /** Whether one bad dough would have been told. */
  doughCheck: DoughCheck
  points: BatchPoint[]
}

/**
 * Every arm against the control, on the doughs that count; what stands in the way of a conclusion is said.
 * @param isIndication with which no verdict is given, whatever the figures
 */
export function compareArms(
  declared: DeclaredTrial,
  count: BatchCount,
  isIndication: boolean,
  say: SayLimit,
): Comparison {
  const { counted, measured, daysCounted } = count
  if (declared.state === 'stopped') say('stopped-early')
  if (daysCounted.length < declared.mixingDays)
    say('fewer-days', null, { counted: daysCounted.length, planned: declared.mixingDays })
  const judged = judgedOrNull(declared, count, say)
  const conditions = conditionsByArm({ arms: declared.arms, batches: counted.map(({ batch }) => batch) })
  if (declared.kind === 'look_only') say('look-only-asked')
  else if (declared.kind !== 'same_as' && declared.measure.direction === 'none') say('no-direction')

  const arms = declared.arms.map(({ position }): ArmResult => {
    const own = counted.filter(({ batch }) => batch.arm === position)
    const found = judged?.arms.get(position)
    return {
      arm: position,
      standing:
        position === 0
          ? 'control'
          : own.length === 0
            ? 'no-batches'
            : found && found.lies !== null
              ? 'compared'
              : 'look-only',
      batches: own.length,
      loaves: own.reduce((sum, { values }) => sum + values.length, 0),
      mean: judged?.means.get(position) ?? null,
      effect: found?.effect ?? null,
      verdict: isIndication ? null : (found?.verdict ?? null),
      lies: found?.lies ?? null,
      doubts: conditions
        .filter(({ arms: each }) => each.some((one) => one.arm === position && one.isNotable))
        .map(({ code }) => code),
    }
  })
  const { flags, doughs } = outlierFlags({ measured, hasFactor: declared.factor !== null })
  if (doughs === 'cannot-be-told' && measured.length > 0) say('bad-dough-not-told')
  return {
    isIndication,
    arms,
    controlMean: judged?.means.get(0) ?? null,
    worthwhile: judged ? declared.margin : null,
    method: judged?.method ?? null,
    loafVariation: declared.factor ? null : loavesOf(counted, declared.confidencePct / 100),
    levels: levelsOf(declared, counted, say),
    conditions,
    flags,
    doughCheck: doughs,
    points: pointsOf(counted, daysCounted),
  }
}

/** The comparison by the declared rule, with what it cannot say; null where there is nothing to compare. */
function judgedOrNull(
  declared: DeclaredTrial,
  { counted, measured, daysCounted }: BatchCount,
  say: SayLimit,
): ArmsJudged | null {
  if (counted.length === 0) {
    say(measured.some(({ batch }) => batch.arm === 0) ? 'no-arms-left' : 'no-control')
    return null
  }
  if (declared.marginUnit === 'pct' && !hasTrueZero(declared.measure)) {
    say('no-true-zero')
    return null
  }
  if (declared.marginUnit === 'pct' && declared.margin >= 100) {
    say('margin-unusable')
    return null
  }
  let judged: ArmsJudged
  try {
    judged = judgeArms(declared, counted)
  } catch (error) {
    say(limitOfCalcError(error))
    return null
  }
  for (const arm of judged.leftOut) say('arm-without-batches', arm)
  const isOfOtherDays = declared.holdsFor === 'any_day'
  if (isOfOtherDays && daysCounted.length === 1) say('one-day')
  else {
    const daysOf = (arm: number) => new Set(counted.flatMap(({ batch }) => (batch.arm === arm ? batch.day : []))).size
    for (const arm of judged.arms.keys()) if (isOfOtherDays && daysOf(arm) === 1) say('arm-on-one-day', arm)
    if (judged.noInterval) say(judged.noInterval === 'no-residual-df' ? 'no-degrees' : 'zero-variance')
  }
  if (new Set(counted.map(({ values }) => values.length)).size > 1) say('unequal-loaves')
  return judged
}

function levelsOf(declared: DeclaredTrial, counted: readonly CountedBatch[], say: SayLimit): LevelEffects | null {
  if (!declared.factor) return null
  const present = declared.arms
    .map(({ position }) => position)
    .filter((position) => counted.some(({ batch }) => batch.arm === position))
  const levels = levelEffects({ factor: declared.factor, arms: present, counted })
  if (levels.limit) say(levels.limit)
  return levels
}

function loavesOf(counted: readonly CountedBatch[], confidence: number): Comparison['loafVariation'] {
  if (counted.length === 0) return null
  const found = loafVariation(
    batchMeans(
      counted.flatMap(({ batch, values }) =>
        values.map((value, i) => ({ arm: String(batch.arm), batch: batch.id, loaf: String(i), value })),
      ),
    ),
    confidence,
  )
  return found && { sd: found.sd, df: found.df }
}

function pointsOf(counted: readonly CountedBatch[], days: readonly number[]): BatchPoint[] {
  const controls = new Map(
    days.map((day) => [
      day,
      meanOf(counted.filter(({ batch }) => batch.day === day && batch.arm === 0).map(({ mean }) => mean)),
    ]),
  )
  return counted.map(({ batch, mean, values }) => {
    const control = sureOf(controls.get(batch.day), 'the control of a day that counts')
    return {
      arm: batch.arm,
      batchId: batch.id,
      mean,
      difference: mean - control,
      loaves: values.map((value) => value - control),
    }
  })
}
