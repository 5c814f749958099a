import 'server-only'
import type { BalancedArm } from '../../calc/arms/balance-arm'
import { roundToResolutions } from '../../calc/formula/round-to-resolutions'
import { roundToScaleG } from '../../calc/weighing/round-to-scale'
import type { DrawnDose } from './draw-up-arm'
import type { ControlDough } from './draw-up-plan'
import type { PlanLine } from './plan-types'

/**
 * Masses for the scale. Lines that did not move keep the control's; those that did are rounded together so that their
 * sum does not drift; each dose and each line that the arm sets goes to
 * the mark nearest to it, because it is what the arm is about.
 */
export function weighedLines(control: ControlDough, balanced: BalancedArm, doses: readonly DrawnDose[]): PlanLine[] {
  const { resolutionG } = control
  const moved = balanced.lines.filter((line) => line.changeG !== 0 && !line.isSet)
  const rounded = moved.length === 0 ? [] : roundToResolutions(moved.map((line) => ({ id: line.lineId, massG: line.armG, resolutionG }))).lines
  const ofControl = control.lines.map(({ id, stageId, ingredient, massG, weighedG }): PlanLine => {
    const line = balanced.lines.find(({ lineId }) => lineId === id)
    return {
      stageId,
      ingredientId: ingredient.id,
      ingredient: ingredient.name,
      kind: ingredient.kind,
      dose: null,
      controlG: massG,
      exactG: line?.armG ?? massG,
      weighedG: line?.isSet ? roundToScaleG({ massG: line.armG, resolutionG }) : (rounded.find((each) => each.id === id)?.massG ?? weighedG),
      changeG: line?.changeG ?? 0,
      atBound: line?.atBound ?? null,
    }
  })
  const ofDoses = doses.map(({ dose, ingredient }, d): PlanLine => ({
    stageId: control.doseStageId,
    ingredientId: ingredient.id,
    ingredient: ingredient.name,
    kind: ingredient.kind,
    dose: d,
    controlG: 0,
    exactG: dose.productG,
    weighedG: roundToScaleG({ massG: dose.productG, resolutionG }),
    changeG: dose.productG,
    atBound: null,
  }))
  return [...ofControl, ...ofDoses]
}
