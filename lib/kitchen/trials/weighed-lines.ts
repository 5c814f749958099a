import 'server-only'
import type { BalancedArm } from '../../calc/arms/balance-arm'
import type { DrawnDose } from './draw-up-arm'
import type { ControlDough } from './draw-up-plan'
import type { PlanLine } from './plan-types'

/** Masses for the scale, as the balance rounded and judged them. Lines that did not move keep the control's. */
export function weighedLines(control: ControlDough, balanced: BalancedArm, doses: readonly DrawnDose[]): PlanLine[] {
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
      weighedG: line && line.changeG !== 0 ? line.weighedG : weighedG,
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
    weighedG: balanced.added[d]?.weighedG ?? dose.productG,
    changeG: dose.productG,
    atBound: null,
  }))
  return [...ofControl, ...ofDoses]
}
