import 'server-only'
import type { BalancedArm } from '../../calc/arms/balance-arm'
import { roundToScaleG } from '../../calc/weighing/round-to-scale'
import { wholeSteps } from '../../calc/weighing/whole-steps'
import type { ControlDough } from './drawn-dough'
import type { PlanFacts, PlanIngredient, PlanLine, PlanScale } from './plan-types'
import { resolutionOfLine } from './resolution-of-line'
import { chosenScale, scaleOfLines } from './scale-of-lines'
import { doseErrorLimitShare, doseErrorShare } from './weighing-of-dose'

/** Product of one dose in one dough, g. */
export type DosedMass = { ingredient: PlanIngredient; productG: number }

/**
 * Masses for the scales. What is of one ingredient in one stage stands on one scale together where that scale was chosen
 * for it or can tell the dose in it, and otherwise the dose by itself. Lines that did not move keep the control's mass where that scale can
 * show it; all others go to the mark nearest to them, as the balance took them when it judged what is held.
 */
export function weighedLines(
  facts: Pick<PlanFacts, 'scale' | 'scales' | 'choices'>,
  control: ControlDough,
  balanced: BalancedArm,
  doses: readonly DosedMass[],
): PlanLine[] {
  const exact = [
    ...control.lines.map(({ id, stageId, stageKind, ingredient, massG, weighedG }) => {
      const line = balanced.lines.find(({ lineId }) => lineId === id)
      return {
        id,
        stageId,
        stageKind,
        ingredient,
        dose: null,
        controlG: massG,
        controlWeighedG: weighedG,
        exactG: line?.armG ?? massG,
        changeG: line?.changeG ?? 0,
        atBound: line?.atBound ?? null,
      }
    }),
    ...doses.map(({ ingredient, productG }, d) => ({
      id: `dose.${d}`,
      stageId: control.doseStageId,
      stageKind: control.doseStageKind,
      ingredient,
      dose: d,
      controlG: 0,
      controlWeighedG: 0,
      exactG: productG,
      changeG: productG,
      atBound: null,
    })),
  ]
  const onScales = exact.map((line) => {
    const same = exact.filter((other) => other.stageId === line.stageId && other.ingredient.id === line.ingredient.id)
    const place = { stageKind: line.stageKind, ingredientId: line.ingredient.id }
    const together =
      chosenScale(facts, place) || tellsDoses(scaleOfLines(facts, place, same), same)
        ? same
        : same.filter(({ dose }) => (dose === null) === (line.dose === null))
    const scale = scaleOfLines(facts, place, together)
    return { ...line, scale, resolutionG: resolutionOfLine(scale) }
  })
  return onScales.map(
    ({
      stageId,
      ingredient,
      dose,
      controlG,
      controlWeighedG,
      exactG,
      changeG,
      atBound,
      scale,
      resolutionG,
    }): PlanLine => ({
      stageId,
      ingredientId: ingredient.id,
      ingredient: ingredient.name,
      kind: ingredient.kind,
      dose,
      controlG,
      exactG,
      weighedG:
        dose === null && changeG === 0
          ? onMark(controlWeighedG, controlG, resolutionG)
          : roundToScaleG({ massG: exactG, resolutionG }),
      scaleId: scale?.id ?? null,
      changeG,
      atBound,
    }),
  )
}

function tellsDoses(scale: PlanScale | null, same: readonly { dose: number | null; exactG: number }[]): boolean {
  return same.every(
    ({ dose, exactG }) =>
      scale === null || dose === null || !(exactG > 0) || doseErrorShare(exactG, scale) <= doseErrorLimitShare,
  )
}

function onMark(weighedG: number, exactG: number, resolutionG: number): number {
  return wholeSteps(weighedG, resolutionG).restSteps === 0 ? weighedG : roundToScaleG({ massG: exactG, resolutionG })
}
