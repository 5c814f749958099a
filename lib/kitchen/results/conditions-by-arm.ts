import 'server-only'
import { meanOf } from './count-batches'
import type { ConditionCode, DeclaredTrial, MeasuredBatch } from './trial-facts'

/**
 * From which difference between an arm and the control on something else is spoken of. Common practice, no source.
 * Dough temperature in °C; proof time and water as a share of the control's.
 */
export const notableDifference = { 'dough-temp': 1, 'proof-time': 0.1, 'water-added': 0.01 } as const satisfies Record<
  ConditionCode,
  number
>

/** Differences of means are off by rounding in the last places: a difference of exactly one degree counts. */
const rounding = 1e-9

export type ConditionOfArm = {
  arm: number
  /** Mean over the batches in which it was written down; null when it never was. */
  mean: number | null
  recorded: number
  batches: number
  /** Arm less control; of water, what the arm took beyond its plan less what the control took beyond its own. */
  difference: number | null
  isNotable: boolean
}

export type Condition = { code: ConditionCode; arms: ConditionOfArm[] }

const conditionCodes = ['dough-temp', 'proof-time', 'water-added'] as const satisfies readonly ConditionCode[]

/**
 * What else differed between the arms, by condition. Water is judged against each arm's own plan, because a balanced
 * arm may be meant to take another amount. A condition that nobody wrote down is left out.
 */
export function conditionsByArm(q: { arms: DeclaredTrial['arms']; batches: readonly MeasuredBatch[] }): Condition[] {
  return conditionCodes.flatMap((code) => {
    if (q.batches.every((batch) => batch.conditions[code] === null)) return []
    const control = figuresOf(q, 0, code)
    return [
      { code, arms: q.arms.map(({ position }) => compared(position, code, figuresOf(q, position, code), control)) },
    ]
  })
}

type Figures = { mean: number | null; beyondPlan: number | null; recorded: number; batches: number }

function figuresOf(
  q: { arms: DeclaredTrial['arms']; batches: readonly MeasuredBatch[] },
  position: number,
  code: ConditionCode,
): Figures {
  const batches = q.batches.filter((batch) => batch.arm === position)
  const values = batches.flatMap((batch) => batch.conditions[code] ?? [])
  if (values.length === 0) return { mean: null, beyondPlan: null, recorded: 0, batches: batches.length }
  const mean = meanOf(values)
  const planned = code === 'water-added' ? (q.arms.find((arm) => arm.position === position)?.plannedWaterG ?? null) : 0
  return {
    mean,
    beyondPlan: planned === null ? null : mean - planned,
    recorded: values.length,
    batches: batches.length,
  }
}

function compared(arm: number, code: ConditionCode, own: Figures, control: Figures): ConditionOfArm {
  const whole = { arm, mean: own.mean, recorded: own.recorded, batches: own.batches }
  if (arm === 0 || own.beyondPlan === null || control.beyondPlan === null || control.mean === null)
    return { ...whole, difference: null, isNotable: false }
  const difference = own.beyondPlan - control.beyondPlan
  const least = code === 'dough-temp' ? notableDifference[code] : notableDifference[code] * Math.abs(control.mean)
  return { ...whole, difference, isNotable: Math.abs(difference) >= least * (1 - rounding) && Math.abs(difference) > 0 }
}
