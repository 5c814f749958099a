import 'server-only'
import { CalcError } from '../../calc/error'
import { Refusal } from '../refusal'
import { drawUpPlan } from './draw-up-plan'
import { figureOfPlan } from './figure-of-plan'
import type { Plan, PlanFacts } from './plan-types'

/**
 * Draws up a plan. What the stores have lost since the draft was written, and figures that no dough can have, are a
 * refusal that names what is at fault.
 */
export function drawUpOrRefuse(facts: PlanFacts, seed: string | null): Plan {
  mustHaveActives(facts)
  try {
    return drawUpPlan(facts, seed)
  } catch (error) {
    if (error instanceof CalcError) throw new Refusal('plan-not-possible', { figure: figureOfPlan(error.facts.field) })
    throw error
  }
}

function mustHaveActives({ arms, ingredients }: PlanFacts): void {
  const dosedByActive = new Set(arms.flatMap((arm) => arm.doses.filter(({ doseOf }) => doseOf === 'active').map(({ ingredientId }) => ingredientId)))
  const without = ingredients.find(({ id, activeShare }) => dosedByActive.has(id) && activeShare === null)
  if (without) throw new Refusal('dose-without-active', { ingredient: without.name })
}
