import 'server-only'
import type { StageKind } from '../../db/generated/enums'
import { armTotals, asArmLine } from './as-arm-line'
import { movesOfArm } from './moves-of-arm'
import type { Plan, PlanFacts } from './plan-types'
import { scaleByRule } from './scale-of-lines'

export type LineToChoose = {
  stageKind: StageKind
  ingredientId: string
  ingredient: string
  /** The most of it in any dough, g. */
  massG: number
  /** Whether it moves as is usual of its kind; null where no choice moves it. */
  movesAsUsual: boolean | null
  whyNoMove: 'not-final' | 'dosed' | null
  mayMove: boolean | null
  /** Name of the scale that the rule finds for it; null without scales. */
  scaleByRule: string | null
  scaleId: string | null
}

/**
 * The lines of a draft's doughs of which something can be chosen: one ingredient once in each kind of stage, with what
 * the rules say of it and what was chosen.
 * @param plan drawn up from the same facts
 */
export function linesToChoose(facts: PlanFacts, plan: Plan): LineToChoose[] {
  const kinds = new Map(facts.stages.map(({ id, kind }) => [id, kind]))
  const lines = plan.arms.flatMap((arm) =>
    arm.lines.map((line) => ({ ...line, arm: arm.position, stageKind: kinds.get(line.stageId) ?? 'final_dough' })),
  )
  const keyOf = ({ stageKind, ingredientId }: { stageKind: StageKind; ingredientId: string }) =>
    `${stageKind} ${ingredientId}`
  return [...new Set(lines.map(keyOf))].flatMap((key): LineToChoose[] => {
    const same = lines.filter((line) => keyOf(line) === key)
    const [first] = same
    if (!first) return []
    const { stageKind, ingredientId, ingredient } = first
    const doughs = [...new Set(same.map(({ arm, stageId }) => `${arm} ${stageId}`))].map((one) =>
      same.filter(({ arm, stageId }) => `${arm} ${stageId}` === one),
    )
    const massOf = (some: typeof same) => some.reduce((sum, { exactG }) => sum + exactG, 0)
    const largest = doughs.reduce((most, some) => (massOf(some) > massOf(most) ? some : most))
    const isInControl = same.some(({ dose }) => dose === null)
    const whyNoMove = stageKind !== 'final_dough' ? 'not-final' : isInControl ? null : 'dosed'
    const choice = facts.choices.find((each) => keyOf(each) === key)
    return [
      {
        stageKind,
        ingredientId,
        ingredient,
        massG: massOf(largest),
        movesAsUsual: whyNoMove === null ? movesAsUsual(facts, ingredientId) : null,
        whyNoMove,
        mayMove: choice?.mayMove ?? null,
        scaleByRule: scaleByRule(facts, largest)?.name ?? null,
        scaleId: choice?.scaleId ?? null,
      },
    ]
  })
}

/** By its kind, and for its own total where that is held; whether it states every total is seen in the plan. */
function movesAsUsual(facts: PlanFacts, ingredientId: string): boolean {
  const ingredient = facts.ingredients.find(({ id }) => id === ingredientId)
  if (!ingredient) return false
  const { moves, unstatedLineIds } = movesOfArm(
    [asArmLine('line', ingredient, 1, 0)],
    facts.declared.heldTotals.map((total) => armTotals[total]),
    new Map(),
  )
  return moves.length + unstatedLineIds.length > 0
}
