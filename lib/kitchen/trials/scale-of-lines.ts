import 'server-only'
import type { LineChoice, PlanFacts, PlanScale } from './plan-types'
import { scaleFor } from './scale-for'

/** The lines of one ingredient in one kind of stage. */
export type LinePlace = Pick<LineChoice, 'stageKind' | 'ingredientId'>
type Together = readonly { dose: number | null; exactG: number }[]

/** The scale on which lines of one ingredient stand together: the one that was chosen for them, otherwise by the rule. */
export function scaleOfLines(
  facts: Pick<PlanFacts, 'scale' | 'scales' | 'choices'>,
  place: LinePlace,
  together: Together,
): PlanScale | null {
  return chosenScale(facts, place) ?? scaleByRule(facts, together)
}

/** The scale that somebody chose for these lines and that is in use; null where nobody did. */
export function chosenScale(
  { scales, choices }: Pick<PlanFacts, 'scales' | 'choices'>,
  place: LinePlace,
): PlanScale | null {
  const choice = choices.find(
    ({ stageKind, ingredientId }) => stageKind === place.stageKind && ingredientId === place.ingredientId,
  )
  return scales.find(({ id }) => id === choice?.scaleId) ?? null
}

/** The scale that the rule finds for lines that stand together. */
export function scaleByRule(
  { scale, scales }: Pick<PlanFacts, 'scale' | 'scales'>,
  together: Together,
): PlanScale | null {
  return scaleFor({ scales, preferredId: scale?.id ?? null, ...loadOf(together) })
}

/** What stands on the scale, and the smallest part of it that must be told apart. */
export function loadOf(together: Together): { massG: number; tellG: number } {
  const massG = together.reduce((sum, { exactG }) => sum + exactG, 0)
  const doses = together.flatMap(({ dose, exactG }) => (dose !== null && exactG > 0 ? [exactG] : []))
  return { massG, tellG: Math.min(massG, ...doses) }
}
