import 'server-only'
import { massesFromPercentages } from '../../calc/formula/masses-from-percentages'
import { roundToResolutions } from '../../calc/formula/round-to-resolutions'
import { drawUpArm, drawUpControl } from './draw-up-arm'
import type { ControlDough } from './drawn-dough'
import { orderOfPlan } from './order-of-plan'
import type { Plan, PlanFacts, PlanWarning } from './plan-types'
import { powerOfPlan } from './power-of-plan'
import { resolutionOfLine, resolutionWithoutScaleG } from './resolution-of-line'
import { scaleOfLines } from './scale-of-lines'

/**
 * Draws up the plan of a trial: one dough of each arm, balanced and rounded to the scale, with its water, allergens
 * and warnings; the order; the chance to see what is worth having. It decides nothing by itself and reads nothing.
 * A line that an arm does not change is weighed as the control's, so that rounding makes no second difference.
 * @param seed of the order and the codes; null for a look at a draft, which has neither
 * @throws CalcError for facts outside the ranges of lib/calc; Error for an ingredient that is named and not given
 */
export function drawUpPlan(facts: PlanFacts, seed: string | null): Plan {
  const { declared, process, scale, mixer } = facts
  const control = controlDough(facts)
  const arms = [drawUpControl(facts, control), ...facts.arms.map((arm, i) => drawUpArm(facts, control, arm, i + 1))]
  const doughs = declared.mixingDays * declared.batchesPerArm * arms.length
  const order = seed === null ? null : orderOfPlan({ seed, declared, arms })
  return {
    declared,
    process,
    stages: facts.stages.map(({ id, kind, name }) => ({ id, kind, name })),
    scale,
    scales: facts.scales,
    mixer,
    size: {
      doughs,
      pieces: doughs * declared.piecesPerBatch,
      flourG: control.flourG,
      doughG: control.doughG,
      doughInAllG: declared.mixingDays * declared.batchesPerArm * arms.reduce((sum, arm) => sum + arm.doughG, 0),
    },
    choices: facts.choices.map((choice) => ({
      ...choice,
      ingredient: facts.ingredients.find(({ id }) => id === choice.ingredientId)?.name ?? '',
    })),
    arms,
    order: order && order.plan,
    power: powerOfPlan(declared, facts.arms.length, facts.ownSpread),
    warnings: [
      ...planWarnings(facts),
      ...(order?.isTiedToAllergen ? [{ code: 'place-tied-to-allergen' as const, dose: null, facts: {} }] : []),
    ],
  }
}

function controlDough(facts: PlanFacts): ControlDough {
  const { declared, process } = facts
  const byId = new Map(facts.ingredients.map((ingredient) => [ingredient.id, ingredient]))
  const asked = facts.stages.flatMap((stage) =>
    stage.lines.map((line) => {
      const ingredient = byId.get(line.ingredientId)
      if (!ingredient) throw new Error(`ingredient ${line.ingredientId} is not given`)
      return {
        ...line,
        stageId: stage.id,
        stageKind: stage.kind,
        isFinalDough: stage.kind === 'final_dough',
        ingredient,
      }
    }),
  )
  const scaled = massesFromPercentages({
    lines: asked.map(({ id, pctFlour, ingredient }) => ({ id, pctFlour, isFlour: ingredient.kind === 'flour' })),
    target: {
      by: 'pieces',
      pieces: declared.piecesPerBatch,
      pieceMassG: process.scalingMassG,
      lossShares: [process.doughLossPct / 100],
      losses: { on: 'dough', combine: 'added' },
    },
  })
  const lines = asked.map((line, i) => ({ ...line, massG: scaled.lines[i]?.massG ?? 0 }))
  const onScales = lines.map((line) => {
    const together = lines.filter(
      (other) => other.stageId === line.stageId && other.ingredient.id === line.ingredient.id,
    )
    return {
      ...line,
      scale: scaleOfLines(
        facts,
        { stageKind: line.stageKind, ingredientId: line.ingredient.id },
        together.map(({ massG }) => ({ dose: null, exactG: massG })),
      ),
    }
  })
  const rounded = roundToResolutions(
    onScales.map(({ id, massG, scale }) => ({ id, massG, resolutionG: resolutionOfLine(scale) })),
  )
  const finalDough = facts.stages.find(({ kind }) => kind === 'final_dough') ?? facts.stages[0]
  if (!finalDough) throw new Error('the formula has no stage')
  return {
    flourG: scaled.flourMassG,
    doughG: scaled.doughMassG,
    doseStageId: finalDough.id,
    doseStageKind: finalDough.kind,
    lines: onScales.map(({ id, stageId, stageKind, isFinalDough, ingredient, massG, scale }, i) => ({
      id,
      stageId,
      stageKind,
      isFinalDough,
      ingredient,
      massG,
      weighedG: rounded.lines[i]?.massG ?? 0,
      scale,
    })),
  }
}

function planWarnings({ declared, scales, stages, ingredients, choices }: PlanFacts): PlanWarning[] {
  const warnings: PlanWarning[] = []
  if (declared.mixingDays * declared.batchesPerArm === 1)
    warnings.push({ code: 'one-batch-per-arm', dose: null, facts: {} })
  if (scales.length === 0)
    warnings.push({ code: 'no-scale', dose: null, facts: { resolutionG: resolutionWithoutScaleG } })
  const inControl = new Set(stages.flatMap((stage) => stage.lines.map((line) => line.ingredientId)))
  for (const { id, name, isEnded } of ingredients) {
    if (isEnded && inControl.has(id))
      warnings.push({ code: 'ingredient-ended', dose: null, facts: { ingredient: name } })
  }
  for (const { ingredientId, scaleId } of choices) {
    const ingredient = ingredients.find(({ id }) => id === ingredientId)?.name ?? ''
    if (scaleId !== null && !scales.some(({ id }) => id === scaleId))
      warnings.push({ code: 'chosen-scale-gone', dose: null, facts: { ingredient } })
  }
  return warnings
}
