import 'server-only'
import { isOutState } from '../conduct/is-out-state'
import type { Limit, SayLimit } from './codes'
import { compareArms, type Comparison } from './compare-arms'
import { countBatches, type BatchCount } from './count-batches'
import { mayCompare, stageOfTrial, type TrialStage } from './stage-of-trial'
import type { DeclaredTrial, MeasuredBatch } from './trial-facts'

export type DayProgress = { day: number; measured: number; ended: number; open: number }

export type TrialAnalysis = {
  stage: TrialStage
  days: DayProgress[]
  open: number
  uncounted: BatchCount['uncounted']
  /** Null until the readings are closed. */
  comparison: Comparison | null
  limits: Limit[]
}

/**
 * What a trial showed: which batches count, every arm against the control on its mean of each mixing day with
 * simultaneous intervals, the verdict by the declared rule, what else differed, and what cannot be concluded. Nothing is
 * compared until the readings are closed, and with fewer mixing days than planned it is an indication, however they came
 * to be fewer.
 * Source: the project's declared rules; methods as in lib/calc/analysis.
 */
export function analyseTrial(declared: DeclaredTrial, batches: readonly MeasuredBatch[]): TrialAnalysis {
  const count = countBatches({ factor: declared.factor, batches })
  const stage = stageOfTrial(declared, count)
  const whole = {
    stage,
    days: progressOf(batches),
    open: count.open,
    uncounted: count.uncounted,
  }
  if (!mayCompare(stage)) return { ...whole, comparison: null, limits: [] }
  const limits: Limit[] = []
  const isIndication = stage === 'stopped-early' || count.daysCounted.length < declared.mixingDays
  const say: SayLimit = (code, arm = null, facts = {}) => limits.push({ code, arm, facts })
  const comparison = compareArms(declared, count, isIndication, say)
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
