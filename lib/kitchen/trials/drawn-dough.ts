import 'server-only'
import type { StageKind } from '../../db/generated/enums'
import type { PlanDose, PlanIngredient, PlanScale } from './plan-types'

/** The control's dough as the plan weighs it, which every other dough of the trial is drawn up from. */
export type ControlLine = {
  id: string
  stageId: string
  stageKind: StageKind
  isFinalDough: boolean
  ingredient: PlanIngredient
  massG: number
  weighedG: number
  scale: PlanScale | null
}
export type ControlDough = {
  flourG: number
  doughG: number
  doseStageId: string
  doseStageKind: StageKind
  lines: ControlLine[]
}

/** A dose of a test dough with what it is of, before it is known how it is weighed. */
export type DrawnDose = {
  dose: Omit<PlanDose, 'weighing'>
  ingredient: PlanIngredient
  insteadOf: PlanIngredient | null
}
